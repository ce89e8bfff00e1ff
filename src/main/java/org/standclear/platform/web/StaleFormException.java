package org.standclear.platform.web;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;

/** Somebody changed the thing while the form was open; answered with 409 and a page that shows both. */
public class StaleFormException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    private final String back;
    private final LinkedHashMap<String, String> yours;
    private final LinkedHashMap<String, String> current;

    /**
     * Both versions, field by field in the words of the form.
     *
     * @param what the thing, for the heading: "the booking on Avocet"
     * @param back where the form can be opened anew
     */
    public StaleFormException(String what, String back, Map<String, String> yours, Map<String, String> current) {
        super("Somebody changed " + what + " while your form was open. Nothing of yours was stored.");
        this.back = back;
        this.yours = new LinkedHashMap<>(yours);
        this.current = new LinkedHashMap<>(current);
    }

    /** Where the form can be opened anew. */
    public String back() {
        return back;
    }

    /** What the form would have stored. */
    public Map<String, String> yours() {
        return Collections.unmodifiableMap(yours);
    }

    /** What is stored now. */
    public Map<String, String> current() {
        return Collections.unmodifiableMap(current);
    }
}
