package org.standclear.core.text;

/** Ends the reading of a text at the first thing that is wrong; readers turn it into a {@link Reading} at their door. */
public final class BadInputException extends RuntimeException {

    private static final long serialVersionUID = 1L;

    private final transient BadInput badInput;

    /** Bad input at a line, counted from 1. */
    public BadInputException(int line, String says) {
        super(says, null, false, false);
        this.badInput = new BadInput(line, says);
    }

    /** What is wrong. */
    public BadInput badInput() {
        return badInput;
    }
}
