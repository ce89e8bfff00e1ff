package org.standclear.platform.security;

import java.time.Instant;
import org.springframework.security.core.AuthenticationException;

/** Too many wrong tries: no password is compared before an instant, whether the account exists or not. */
public class SignInPausedException extends AuthenticationException {
    private static final long serialVersionUID = 1L;

    private final Instant until;

    /** The pause ends at that instant. */
    public SignInPausedException(Instant until) {
        super("too many tries");
        this.until = until;
    }

    /** When the next try is looked at. */
    public Instant until() {
        return until;
    }
}
