package org.standclear.platform.web;

import java.util.HashMap;
import java.util.Map;
import org.springframework.http.HttpStatus;

/** Ends a call by a program with a problem that the caller can mend. */
public final class ProblemException extends RuntimeException {

    private static final long serialVersionUID = 1L;

    private final HttpStatus status;
    private final HashMap<String, Object> more;

    /** With members of our own beside the detail. */
    public ProblemException(HttpStatus status, String detail, Map<String, Object> more) {
        super(detail, null, false, false);
        this.status = status;
        this.more = new HashMap<>(more);
    }

    /** With the detail alone. */
    public ProblemException(HttpStatus status, String detail) {
        this(status, detail, Map.of());
    }

    HttpStatus status() {
        return status;
    }

    String detail() {
        return String.valueOf(getMessage());
    }

    Map<String, Object> more() {
        return more;
    }
}
