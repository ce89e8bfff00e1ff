package org.standclear.signoff.rules;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Stream;
import org.standclear.signoff.Answers;
import org.standclear.signoff.Part;
import org.standclear.signoff.SignoffList;

/** Compares answers with what is known, and with each other. */
public final class Comparison {

    private Comparison() {}

    /**
     * A difference.
     *
     * @param says for the person who answered; gives nothing away that they have not read themselves or declared
     */
    public record Difference(int item, String expected, String read, String says) {}

    /** The answer to one item beside what is known of it. The releaser's are compared with the operator's instead. */
    public static Optional<Difference> withKnown(
            SignoffList list, Part part, int item, Map<String, String> read, Expected known) {
        if (list != SignoffList.BENCH) {
            return session(part, item, read, known);
        }
        return part == Part.OPERATOR ? bench(item, read, known) : Optional.empty();
    }

    private static Optional<Difference> session(Part part, int item, Map<String, String> read, Expected known) {
        if (item == Items.OTHER_PERSON) {
            String typed = read.getOrDefault("other", "");
            String other = known.other(part);
            return isNamed(other, typed)
                    ? Optional.empty()
                    : different(
                            item,
                            other,
                            typed,
                            "The booking names " + other + ", not " + typed
                                    + ". Change the booking first if somebody else stands with you.");
        }
        return item == Items.AS_BOOKED ? tool(item, read.getOrDefault("tool", ""), known) : Optional.empty();
    }

    private static Optional<Difference> bench(int item, Map<String, String> read, Expected known) {
        return switch (item) {
            case Items.PROGRAM ->
                Reading.FourHex.same(known.fingerprintEnd(), read.getOrDefault("fingerprint", ""))
                        ? Optional.empty()
                        : different(
                                item,
                                known.fingerprintEnd(),
                                read.getOrDefault("fingerprint", ""),
                                "The file that was checked for this booking has another fingerprint. Load that file, or attach"
                                        + " this one to the booking and check it first.");
            case Items.POWER -> display(read, known);
            case Items.SENSITIVITY -> sensitivity(read.getOrDefault("sensitivity", ""), known);
            case Items.TOOL -> tool(item, read.getOrDefault("tool", ""), known);
            case Items.END -> end(read, known);
            default -> Optional.empty();
        };
    }

    private static Optional<Difference> display(Map<String, String> read, Expected known) {
        String power = read.getOrDefault("power", "");
        String declaredPower = Objects.requireNonNullElse(known.declared().power(), "nothing");
        if (!power.equals(declaredPower)) {
            return different(
                    Items.POWER,
                    declaredPower,
                    power,
                    "Power mode read: " + power + ". Declared: " + declaredPower
                            + ". Set it at the robot and read it again.");
        }
        Double declared = known.declared().overridePercent();
        String override = read.getOrDefault("override", "");
        if (declared == null || !override.equals(Numbers.shown(declared))) {
            String expected = declared == null ? "nothing" : Numbers.shown(declared) + " %";
            return different(
                    Items.POWER,
                    expected,
                    override + " %",
                    "Override read: " + override + " %. Declared: " + expected
                            + ". Set it at the robot and read it again.");
        }
        return Optional.empty();
    }

    private static Optional<Difference> sensitivity(String read, Expected known) {
        String tested = known.sensitivity();
        if (tested == null || same(level(tested), level(read))) {
            return Optional.empty();
        }
        return different(
                Items.SENSITIVITY,
                tested,
                read,
                "Collision sensitivity read: " + read + ". Today's day test read: " + tested + ". Ask a technician.");
    }

    /** Whoever reads "level 3" at the display types it so, or as 3. */
    private static String level(String typed) {
        return typed.strip().replaceFirst("(?i)^level\\s+(?=\\S)", "");
    }

    private static Optional<Difference> tool(int item, String read, Expected known) {
        String declared = Objects.requireNonNullElse(known.declared().tool(), known.fittedTool());
        if (same(declared, read) && same(known.fittedTool(), read)) {
            return Optional.empty();
        }
        return different(
                item,
                declared,
                read,
                "Tool read: " + read + ". Declared: " + declared + "; on the cell's record: " + known.fittedTool()
                        + ". Ask a technician before anything moves.");
    }

    private static Optional<Difference> end(Map<String, String> read, Expected known) {
        String loop = Objects.requireNonNullElse(known.declared().loop(), "1");
        String answered = "forever".equals(read.get("ends")) ? "forever" : read.getOrDefault("passes", "");
        return loop.equals(answered)
                ? Optional.empty()
                : different(
                        Items.END, loop, answered, "Read: " + passes(answered) + ". Declared: " + passes(loop) + ".");
    }

    private static String passes(String loop) {
        return switch (loop) {
            case "forever" -> "loops until it is stopped";
            case "1" -> "1 pass";
            default -> loop + " passes";
        };
    }

    /** Item 2, read by the operator and blind by the releaser. The words name no value: it is read again. */
    public static List<Difference> withEachOther(Answers operator, Answers releaser) {
        return Stream.of("power", "override")
                .filter(name -> !operator.value(Items.POWER, name).equals(releaser.value(Items.POWER, name)))
                .map(name -> new Difference(
                        Items.POWER,
                        operator.value(Items.POWER, name),
                        releaser.value(Items.POWER, name),
                        (name.equals("power") ? "Power mode" : "Override")
                                + ": operator and releaser read different values. Both read it again."))
                .toList();
    }

    private static Optional<Difference> different(int item, String expected, String read, String says) {
        return Optional.of(new Difference(item, expected, read, says));
    }

    private static boolean same(String one, String other) {
        return one.strip().equalsIgnoreCase(other.strip());
    }

    /** Whether what was typed is the whole name or one of its parts. */
    private static boolean isNamed(String printedName, String typed) {
        String wanted = typed.strip().toLowerCase(Locale.ROOT);
        return !wanted.isEmpty()
                && Stream.concat(Stream.of(printedName), Arrays.stream(printedName.split("[\\s]+")))
                        .anyMatch(part -> part.toLowerCase(Locale.ROOT).equals(wanted));
    }
}
