package org.standclear.run;

import java.util.List;
import java.util.Optional;

/** The close-out, one tap each, in this order: motion is disabled before anybody reaches for a part. */
public enum CloseOutItem {
    MOTION_DISABLED("Motion disabled?", new Choice("disabled", "motion disabled", "")),
    PARTS_OUT("Parts out?", new Choice("out", "parts out", "")),
    TOOL(
            "Tool as declared?",
            new Choice("as-declared", "as declared", ""),
            new Choice("different", "different", "the fitted tool is not the declared one")),
    ARM_PARKED("Arm parked?", new Choice("parked", "arm parked", "")),
    ODD(
            "Anything odd?",
            new Choice("nothing", "nothing", ""),
            new Choice("protective-stop", "protective stop", ""),
            new Choice("near-miss", "near miss", ""),
            new Choice("fault", "fault", "a fault was reported at close-out"));

    private final String challenge;
    private final List<Choice> choices;

    CloseOutItem(String challenge, Choice... choices) {
        this.challenge = challenge;
        this.choices = List.of(choices);
    }

    /** The question as it is read out. */
    public String challenge() {
        return challenge;
    }

    /** What can be tapped. */
    public List<Choice> choices() {
        return choices;
    }

    /** What can be tapped after a run; one in which the arm stopped itself was not without anything odd. */
    public List<Choice> choices(boolean protectiveStop) {
        return choices.stream()
                .filter(choice ->
                        this != ODD || !protectiveStop || !choice.value().equals("nothing"))
                .toList();
    }

    /** Its number on the list. */
    public int number() {
        return ordinal() + 1;
    }

    /** The choice of that value, if there is one. */
    public Optional<Choice> choice(String value) {
        return choices.stream().filter(one -> one.value().equals(value)).findFirst();
    }

    /** The item after so many answered ones; empty when all are answered. */
    public static Optional<CloseOutItem> after(int answered) {
        return answered < values().length ? Optional.of(values()[answered]) : Optional.empty();
    }

    /**
     * One possible tap.
     *
     * @param holdsCell why the cell is held after it; empty when it is not
     */
    public record Choice(String value, String words, String holdsCell) {}
}
