package org.standclear.platform.forms;

import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.dao.TransientDataAccessException;

/**
 * Does a piece of work again when the database gave up on it because two waited for each other, or one waited too long.
 * The work is a whole transaction: what an earlier try wrote is rolled back before the next begins.
 */
public final class Patience {

    /** The first try and three more. */
    static final int TRIES = 4;

    private static final Logger LOG = LoggerFactory.getLogger(Patience.class);

    private Patience() {}

    /** What the work returns; throws what the last try threw when the database gave up every time. */
    public static <T extends @Nullable Object> T again(Supplier<T> work) {
        for (int tries = 1; ; tries++) {
            try {
                return work.get();
            } catch (TransientDataAccessException gaveUp) {
                if (tries == TRIES) {
                    throw gaveUp;
                }
                LOG.info("the database gave up on a try, once more ({})", gaveUp.getMessage());
            }
        }
    }
}
