package org.standclear.platform.forms;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;
import org.springframework.dao.CannotAcquireLockException;
import org.springframework.dao.DataIntegrityViolationException;

/** Work is done again after a lock, as often as was said, and after nothing else. */
class PatienceTests {

    private final AtomicInteger tries = new AtomicInteger();

    private String failing(int times) {
        if (tries.incrementAndGet() <= times) {
            throw new CannotAcquireLockException("deadlock");
        }
        return "kept";
    }

    @Test
    void triesAgainUntilItIsKept() {
        assertThat(Patience.again(() -> failing(3))).isEqualTo("kept");
        assertThat(tries.get()).isEqualTo(4);
    }

    @Test
    void givesUpAfterTheFourthTry() {
        assertThatThrownBy(() -> Patience.again(() -> failing(4))).isInstanceOf(CannotAcquireLockException.class);
        assertThat(tries.get()).isEqualTo(4);
    }

    @Test
    void doesNotTryAgainWhatTheDatabaseRefuses() {
        assertThatThrownBy(() -> Patience.again(() -> {
                    tries.incrementAndGet();
                    throw new DataIntegrityViolationException("no");
                }))
                .isInstanceOf(DataIntegrityViolationException.class);
        assertThat(tries.get()).isEqualTo(1);
    }
}
