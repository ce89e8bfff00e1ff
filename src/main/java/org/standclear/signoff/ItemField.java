package org.standclear.signoff;

import java.util.List;

/**
 * One thing that an item asks for.
 *
 * @param name of the value in forms and in the record
 * @param label what is typed or chosen, in a few words
 * @param unit shown after a number; empty for none
 * @param choices what can be chosen; empty unless the kind is {@link Kind#CHOICE}
 */
public record ItemField(String name, String label, Kind kind, String unit, List<Choice> choices) {

    public ItemField {
        choices = List.copyOf(choices);
    }

    /** A few typed characters. */
    public static ItemField text(String name, String label) {
        return new ItemField(name, label, Kind.TEXT, "", List.of());
    }

    /** A typed number. */
    public static ItemField number(String name, String label, String unit) {
        return new ItemField(name, label, Kind.NUMBER, unit, List.of());
    }

    /** One of several large buttons. */
    public static ItemField choice(String name, String label, Choice... choices) {
        return new ItemField(name, label, Kind.CHOICE, "", List.of(choices));
    }

    /** How the answer is given. */
    public enum Kind {
        TEXT,
        NUMBER,
        CHOICE
    }

    /**
     * One possible answer.
     *
     * @param stops empty when the list goes on with it; else what has to be done first
     */
    public record Choice(String value, String words, String stops) {

        /** An answer that lets the list go on. */
        public static Choice goesOn(String value, String words) {
            return new Choice(value, words, "");
        }
    }
}
