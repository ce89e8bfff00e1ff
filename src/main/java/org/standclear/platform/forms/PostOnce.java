package org.standclear.platform.forms;

import java.time.Clock;
import java.time.Instant;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import org.springframework.dao.DuplicateKeyException;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.PlatformTransactionManager;
import org.springframework.transaction.support.TransactionTemplate;
import org.standclear.platform.ids.Id;
import org.standclear.platform.time.SqlTime;

/**
 * Makes a POST act once, however often it is sent. The token and the work commit together, so a process that dies half
 * way leaves neither, and two equal posts at the same time end as one act with one answer.
 */
@Service
public class PostOnce {

    private final JdbcClient jdbc;
    private final TransactionTemplate transaction;
    private final Clock clock;

    PostOnce(JdbcClient jdbc, PlatformTransactionManager transactions, Clock clock) {
        this.jdbc = jdbc;
        this.transaction = new TransactionTemplate(transactions);
        this.clock = clock;
    }

    /**
     * Runs the work in one transaction unless the token was used before.
     *
     * @param token the form's token; anything that is no UUID is answered with {@link InvalidFormTokenException}
     * @param work does the act and returns where to go next, or null when it was refused: then everything it wrote is
     *     rolled back and the token stays unused, so the corrected form can be sent again
     * @return where to go next (the earlier answer when the token was used before), or empty when refused
     */
    public Optional<String> run(@Nullable String token, Supplier<@Nullable String> work) {
        UUID id = parse(token);
        Optional<String> earlier = locationOf(id);
        if (earlier.isPresent()) {
            return earlier;
        }
        try {
            return Objects.requireNonNull(transaction.execute(status -> {
                // first, so that a twin waits here and finds the answer instead of doing the work against it
                use(id);
                String location = work.get();
                if (location == null) {
                    status.setRollbackOnly();
                    return Optional.empty();
                }
                remember(id, location);
                return Optional.of(location);
            }));
        } catch (TokenUsedException alreadyUsed) {
            return locationOf(id);
        }
    }

    /** The same, and again when the database gave up because of others' locks: for what must not be lost in a rush. */
    public Optional<String> runPatiently(@Nullable String token, Supplier<@Nullable String> work) {
        return Patience.again(() -> run(token, work));
    }

    /** When the form with that token acted; empty when it did not yet, or when that is no token. */
    public Optional<Instant> actedAt(@Nullable String token) {
        try {
            return jdbc.sql("select used_at from form_tokens where token = :token")
                    .param("token", parse(token))
                    .query((row, number) -> SqlTime.read(row, "used_at"))
                    .optional();
        } catch (InvalidFormTokenException noToken) {
            return Optional.empty();
        }
    }

    private void use(UUID id) {
        try {
            jdbc.sql("insert into form_tokens (token, location, used_at) values (:token, '', :at)")
                    .param("token", id)
                    .param("at", SqlTime.toSql(clock.instant()))
                    .update();
        } catch (DuplicateKeyException twin) {
            throw new TokenUsedException(twin);
        }
    }

    private void remember(UUID id, String location) {
        jdbc.sql("update form_tokens set location = :location where token = :token")
                .param("location", location)
                .param("token", id)
                .update();
    }

    private Optional<String> locationOf(UUID id) {
        return jdbc.sql("select location from form_tokens where token = :token")
                .param("token", id)
                .query(String.class)
                .optional();
    }

    private static UUID parse(@Nullable String token) {
        try {
            return Id.parse(token == null ? "" : token);
        } catch (IllegalArgumentException notAToken) {
            throw new InvalidFormTokenException();
        }
    }

    /** Rolls the second of two equal posts back; never leaves this class. */
    private static final class TokenUsedException extends RuntimeException {
        private static final long serialVersionUID = 1L;

        TokenUsedException(Throwable cause) {
            super(cause);
        }
    }
}
