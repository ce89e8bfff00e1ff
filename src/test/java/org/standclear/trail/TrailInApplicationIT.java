package org.standclear.trail;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.transaction.PlatformTransactionManager;
import org.springframework.transaction.support.TransactionTemplate;
import org.standclear.platform.lab.Labs;
import org.standclear.testing.MovableClock;
import org.standclear.testing.OnH2;

/** The running application gives every transaction its place for entries. */
@OnH2
class TrailInApplicationIT {

    @Autowired
    private Trail trail;

    @Autowired
    private TrailReader reader;

    @Autowired
    private Labs labs;

    @Autowired
    private PlatformTransactionManager transactions;

    @Test
    void storesAnEntryAtTheEndOfTheTransaction() {
        new TransactionTemplate(transactions)
                .executeWithoutResult(status -> trail.append(
                        TrailEntry.of(labs.theLab().id(), "test.done", "in-application", null, "Something was done.")));

        assertThat(reader.about(labs.theLab().id(), "in-application"))
                .singleElement()
                .satisfies(entry -> {
                    assertThat(entry.words()).isEqualTo("Something was done.");
                    assertThat(entry.at()).isEqualTo(MovableClock.START);
                });
        assertThat(trail.verify(labs.theLab().id())).isInstanceOf(TrailVerification.Whole.class);
    }
}
