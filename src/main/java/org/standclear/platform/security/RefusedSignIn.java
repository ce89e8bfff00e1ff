package org.standclear.platform.security;

import java.time.Instant;
import org.jspecify.annotations.Nullable;

/**
 * A try to sign in that was refused, for the page that shows the form again.
 *
 * @param login what was typed
 * @param to where the person wanted to go; empty for the start page
 * @param pausedUntil when the next try is looked at; null when it may follow at once
 */
public record RefusedSignIn(
        String login, String to, @Nullable Instant pausedUntil) {

    /** The request attribute it is carried in. */
    public static final String ATTRIBUTE = "refusedSignIn";

    /** Where the page is. */
    public static final String PATH = "/sign-in/refused";
}
