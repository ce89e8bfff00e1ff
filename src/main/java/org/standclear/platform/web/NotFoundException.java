package org.standclear.platform.web;

/** The thing does not exist, or is not the asker's to see: both get the same page with 404. */
public class NotFoundException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    /** Names what was looked for, in words that give nothing away: "booking", "program". */
    public NotFoundException(String what) {
        super("No such " + what + ", or it is not yours.");
    }
}
