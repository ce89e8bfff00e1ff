package org.standclear.booking;

import static org.assertj.core.api.Assertions.assertThat;

import java.sql.SQLException;
import org.junit.jupiter.api.Test;
import org.springframework.dao.CannotAcquireLockException;
import org.springframework.dao.DataAccessException;
import org.springframework.dao.DataIntegrityViolationException;
import org.springframework.dao.DuplicateKeyException;

/** A rush is sent again; a fault is shown as a fault. SQLSTATE classes: SQL standard, and PostgreSQL's Appendix A for 23P01. */
class ContentionTests {

    private static DataAccessException refused(String sqlState) {
        return new DataIntegrityViolationException("refused", new SQLException("refused", sqlState));
    }

    @Test
    void isWhenOthersWereFaster() {
        assertThat(Contention.is(new CannotAcquireLockException("deadlock"))).isTrue();
        assertThat(Contention.is(new DuplicateKeyException("same key"))).isTrue();
        assertThat(Contention.is(refused("23P01"))).as("exclusion violated").isTrue();
    }

    @Test
    void isNotWhenAValueIsRefusedForItsOwnSake() {
        assertThat(Contention.is(refused("23502"))).as("not null").isFalse();
        assertThat(Contention.is(refused("23503"))).as("foreign key").isFalse();
        assertThat(Contention.is(refused("23514"))).as("check").isFalse();
    }
}
