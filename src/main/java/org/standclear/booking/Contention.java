package org.standclear.booking;

import java.sql.SQLException;
import org.springframework.dao.DataAccessException;
import org.springframework.dao.DuplicateKeyException;
import org.springframework.dao.TransientDataAccessException;

/** Tells a rush from a fault: others wanted the same at the same time, or the database refuses a value for its own sake. */
public final class Contention {

    private Contention() {}

    /** Whether the database gave up because others were at the same rows. */
    public static boolean is(DataAccessException gaveUp) {
        return gaveUp instanceof TransientDataAccessException
                || gaveUp instanceof DuplicateKeyException
                || gaveUp.getMostSpecificCause() instanceof SQLException sql
                        && ClaimOverlap.EXCLUSION.equals(sql.getSQLState());
    }
}
