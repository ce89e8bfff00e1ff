package org.standclear.platform.web;

/** The thing was there and does not come back: a page with 410. */
public class GoneException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    /** Says in a sentence what is gone, since when, and what is still there. */
    public GoneException(String says) {
        super(says);
    }
}
