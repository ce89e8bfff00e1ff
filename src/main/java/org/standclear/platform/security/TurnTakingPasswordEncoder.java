package org.standclear.platform.security;

import java.util.concurrent.Semaphore;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import org.springframework.security.crypto.password.PasswordEncoder;

/**
 * Lets a few passwords at a time be hashed. Argon2 takes 16 MiB for each, so a classroom that signs in at once would
 * otherwise fill the heap; waiting some tenths of a second is better.
 */
final class TurnTakingPasswordEncoder implements PasswordEncoder {

    private final PasswordEncoder encoder;
    private final Semaphore turns;

    TurnTakingPasswordEncoder(PasswordEncoder encoder, int atOnce) {
        this.encoder = encoder;
        this.turns = new Semaphore(atOnce, true);
    }

    @Override
    public @Nullable String encode(@Nullable CharSequence raw) {
        return inTurn(() -> encoder.encode(raw));
    }

    @Override
    public boolean matches(@Nullable CharSequence raw, @Nullable String encoded) {
        return Boolean.TRUE.equals(inTurn(() -> encoder.matches(raw, encoded)));
    }

    @Override
    public boolean upgradeEncoding(@Nullable String encoded) {
        return encoder.upgradeEncoding(encoded);
    }

    private <T> @Nullable T inTurn(Supplier<@Nullable T> work) {
        turns.acquireUninterruptibly();
        try {
            return work.get();
        } finally {
            turns.release();
        }
    }
}
