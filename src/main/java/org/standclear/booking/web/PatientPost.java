package org.standclear.booking.web;

import java.util.Optional;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.dao.DataIntegrityViolationException;
import org.springframework.dao.TransientDataAccessException;
import org.springframework.stereotype.Component;
import org.standclear.booking.Contention;
import org.standclear.platform.forms.PostOnce;

/**
 * Runs a form's work again when the database gave up on it, because two waited for each other or one waited too long.
 * The second try sees what the others did and gets an ordinary answer.
 */
@Component
class PatientPost {

    private static final Logger LOG = LoggerFactory.getLogger(PatientPost.class);
    private static final int TRIES = 4;

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
                    if (!Contention.is(gaveUp)) {
                        throw gaveUp;
                    }
                    throw new TooBusyException();
                }
            }
        }
    }

    /** So many people want the same things at this moment that the database could not decide. */
    static final class TooBusyException extends RuntimeException {
        private static final long serialVersionUID = 1L;
    }
}
