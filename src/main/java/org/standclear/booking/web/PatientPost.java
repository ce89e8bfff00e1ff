package org.standclear.booking.web;

import java.sql.SQLException;
import java.util.Optional;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.dao.DataAccessException;
import org.springframework.dao.DataIntegrityViolationException;
import org.springframework.dao.DuplicateKeyException;
import org.springframework.dao.TransientDataAccessException;
import org.springframework.stereotype.Component;
import org.standclear.platform.forms.PostOnce;

/**
 * Runs a form's work again when the database gave up on it, because two waited for each other or one waited too long.
 * The second try sees what the others did and gets an ordinary answer.
 */
@Component
class PatientPost {

    private static final Logger LOG = LoggerFactory.getLogger(PatientPost.class);
    private static final int TRIES = 4;

    /** SQLSTATE of two claims that overlap, on both databases. */
    private static final String OVERLAP = "23P01";

    private final PostOnce postOnce;

    PatientPost(PostOnce postOnce) {
        this.postOnce = postOnce;
    }

    /**
     * As {@link PostOnce#run}.
     *
     * @throws TooBusyException when the database gave up every time; nothing was stored
     */
    Optional<String> run(@Nullable String token, Supplier<@Nullable String> work) {
        for (int again = 1; ; again++) {
            try {
                return postOnce.run(token, work);
            } catch (TransientDataAccessException | DataIntegrityViolationException gaveUp) {
                if (again == TRIES) {
                    LOG.warn("gave up after {} tries", TRIES, gaveUp);
                    if (!isContention(gaveUp)) {
                        throw gaveUp;
                    }
                    throw new TooBusyException();
                }
            }
        }
    }

    /** Whether others wanted the same; a value that the database refuses for its own sake is a fault and no rush. */
    private static boolean isContention(DataAccessException gaveUp) {
        return gaveUp instanceof TransientDataAccessException
                || gaveUp instanceof DuplicateKeyException
                || gaveUp.getMostSpecificCause() instanceof SQLException sql && OVERLAP.equals(sql.getSQLState());
    }

    /** So many people want the same things at this moment that the database could not decide. */
    static final class TooBusyException extends RuntimeException {
        private static final long serialVersionUID = 1L;
    }
}
