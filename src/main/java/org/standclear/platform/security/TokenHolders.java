package org.standclear.platform.security;

import java.time.Instant;

/** Says whose personal token a request carries. */
public interface TokenHolders {

    /** Whose it is; wrong ones are counted for the client's address. */
    Found find(String token, String remoteAddress);

    /** What the look-up said. */
    sealed interface Found {

        /** It counts, and its owner's account is open. */
        record Known(SignedInPerson person) implements Found {}

        /** Nobody's, or it was revoked or has expired. */
        record Unknown() implements Found {}

        /** Too many wrong ones from there; none is looked at before that instant. */
        record Paused(Instant until) implements Found {}
    }
}
