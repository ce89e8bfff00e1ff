package org.standclear.trail;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.JdbcTemplate;
import org.springframework.transaction.PlatformTransactionManager;
import org.springframework.transaction.support.TransactionTemplate;
import org.standclear.cell.CellRegister;
import org.standclear.cell.CellRegister.Decided;
import org.standclear.cell.CellRegister.NewProposal;
import org.standclear.cell.CellRegister.Proposed;
import org.standclear.cell.SampleCell;
import org.standclear.platform.ids.LabId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.lab.Labs;
import org.standclear.signoff.BenchNumbers;
import org.standclear.testing.LockWaits;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;

/**
 * An act that holds its lab's row waits for the record's head while a round that has the head stores its entry, which
 * refers to the lab: both end.
 */
class HeadTakenLastIT {

    abstract static class Cases {

        @Autowired
        CellRegister cells;

        @Autowired
        BenchNumbers numbers;

        @Autowired
        Labs labs;

        @Autowired
        Trail trail;

        @Autowired
        JdbcTemplate jdbc;

        @Autowired
        PlatformTransactionManager transactions;

        private void besideARound(Runnable act) throws Exception {
            LabId lab = labs.theLab().id();
            LockWaits waits = new LockWaits(jdbc);
            BlockingQueue<Long> session = new LinkedBlockingQueue<>();
            CompletableFuture<Void> acting = new TransactionTemplate(transactions).execute(round -> {
                jdbc.queryForList("select hash from trail_heads where lab = ? for update", lab.value());
                CompletableFuture<Void> other = CompletableFuture.runAsync(
                        () -> new TransactionTemplate(transactions).executeWithoutResult(status -> {
                            session.add(waits.mine());
                            act.run();
                        }));
                waits.await(next(session));
                trail.append(TrailEntry.of(lab, "test.round", "head-taken-last", null, "A round did something."));
                return other;
            });
            assertThat(acting).as("the act beside the round").succeedsWithin(20, TimeUnit.SECONDS);
            assertThat(trail.verify(lab)).isInstanceOf(TrailVerification.Whole.class);
        }

        private static long next(BlockingQueue<Long> session) {
            try {
                return List.of(session.poll(20, TimeUnit.SECONDS)).get(0);
            } catch (InterruptedException stopped) {
                throw new AssertionError("stopped while waiting", stopped);
            }
        }

        @Test
        void approvesANewCell() throws Exception {
            NewProposal asked =
                    new NewProposal(null, SampleCell.file(SampleCell.name(), 1), "new cell", PersonId.next(), 0);
            Proposed.Kept kept = (Proposed.Kept) cells.propose(asked);
            besideARound(() -> assertThat(cells.approve(kept.proposal().id(), PersonId.next(), 0))
                    .isInstanceOf(Decided.Done.class));
        }

        @Test
        void changesNumbersOfTheLab() throws Exception {
            besideARound(() -> numbers.change(numbers.inForce(), PersonId.next(), "the same again"));
        }

        @Test
        void locksAllLabs() throws Exception {
            besideARound(() -> {
                labs.lockAll();
                trail.append(TrailEntry.of(
                        labs.theLab().id(), "test.labs-locked", "head-taken-last", null, "All labs were locked."));
            });
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
