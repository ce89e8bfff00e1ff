package org.standclear.platform.forms;

/** The form came without its token, or with something else in its place; answered with 400. */
public class InvalidFormTokenException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    InvalidFormTokenException() {
        super("The form was sent without its token. Open the page again and send the form from there.");
    }
}
