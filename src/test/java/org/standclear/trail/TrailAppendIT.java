package org.standclear.trail;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.springframework.transaction.TransactionDefinition;
import org.springframework.transaction.support.TransactionSynchronization;
import org.springframework.transaction.support.TransactionSynchronizationManager;
import org.springframework.transaction.support.TransactionTemplate;
import org.standclear.platform.ids.LabId;

/** What is appended is stored with the transaction it happened in, in the order of the commits, or not at all. */
class TrailAppendIT {

    @TestInstance(TestInstance.Lifecycle.PER_CLASS)
    abstract static class Cases {

        TrailDatabase db;

        abstract TrailDatabase open();

        @BeforeAll
        void openDatabase() {
            db = open();
        }

        @AfterAll
        void closeDatabase() {
            db.close();
        }

        private TrailEntry entry(LabId lab, String words) {
            return TrailEntry.of(lab, "test.done", "thing-1", null, words);
        }

        private List<String> words(LabId lab) {
            return db.reader.about(lab, "thing-1").stream()
                    .map(RecordedEntry::words)
                    .toList();
        }

        private TransactionTemplate propagation(int behaviour) {
            TransactionTemplate template = new TransactionTemplate(db.manager);
            template.setPropagationBehavior(behaviour);
            return template;
        }

        private void whileCommitting(Runnable act) {
            TransactionSynchronizationManager.registerSynchronization(new TransactionSynchronization() {
                @Override
                public void beforeCommit(boolean readOnly) {
                    act.run();
                }
            });
        }

        @Test
        void chainsTheEntriesOfOneTransaction() {
            LabId lab = db.newLab();
            db.transaction.executeWithoutResult(status -> {
                db.trail.append(entry(lab, "first"));
                db.trail.append(entry(lab, "second"));
            });

            List<RecordedEntry> stored = db.reader.about(lab, "thing-1");
            assertThat(stored).extracting(RecordedEntry::sequence).containsExactly(1L, 2L);
            assertThat(stored.get(0).previousHash()).isEqualTo(EntryHash.NONE);
            assertThat(stored.get(1).previousHash()).isEqualTo(stored.get(0).hash());
            assertThat(stored.get(1).at()).isEqualTo(TrailDatabase.NOON);
            assertThat(db.trail.verify(lab))
                    .isEqualTo(new TrailVerification.Whole(2, stored.get(1).hash()));
        }

        @Test
        void keepsNothingOfATransactionThatRollsBack() {
            LabId lab = db.labWithEntries(1);
            db.transaction.executeWithoutResult(status -> {
                db.trail.append(entry(lab, "undone"));
                status.setRollbackOnly();
            });
            db.append(lab, "done");

            assertThat(words(lab)).containsExactly("entry 1", "done");
            assertThat(db.trail.verify(lab)).isInstanceOf(TrailVerification.Whole.class);
        }

        @Test
        void refusesToAppendOutsideATransactionThatMayWrite() {
            LabId lab = db.newLab();
            TransactionTemplate readOnly = propagation(TransactionDefinition.PROPAGATION_REQUIRED);
            readOnly.setReadOnly(true);

            assertThatThrownBy(() -> db.trail.append(entry(lab, "lost"))).isInstanceOf(IllegalStateException.class);
            assertThatThrownBy(() -> readOnly.executeWithoutResult(status -> db.trail.append(entry(lab, "lost"))))
                    .isInstanceOf(IllegalStateException.class);
        }

        @Test
        void takesEntriesThatAreAppendedWhileTheTransactionCommits() {
            LabId lab = db.newLab();
            db.transaction.executeWithoutResult(status -> {
                whileCommitting(() -> db.trail.append(entry(lab, "first of all, and late")));
                db.trail.append(entry(lab, "in time"));
                whileCommitting(() -> db.trail.append(entry(lab, "late")));
            });
            LabId onlyLate = db.newLab();
            db.transaction.executeWithoutResult(
                    status -> whileCommitting(() -> db.trail.append(entry(onlyLate, "late"))));

            assertThat(words(lab)).containsExactlyInAnyOrder("first of all, and late", "in time", "late");
            assertThat(words(onlyLate)).containsExactly("late");
            assertThat(db.trail.verify(lab)).isInstanceOf(TrailVerification.Whole.class);
        }

        @Test
        void forgetsWhatASavepointTakesBack() {
            LabId lab = db.newLab();
            db.transaction.executeWithoutResult(outer -> {
                db.trail.append(entry(lab, "before"));
                propagation(TransactionDefinition.PROPAGATION_NESTED).executeWithoutResult(nested -> {
                    db.trail.append(entry(lab, "taken back"));
                    nested.setRollbackOnly();
                });
                db.trail.append(entry(lab, "after"));
            });

            assertThat(words(lab)).containsExactly("before", "after");
        }

        @Test
        void keepsInnerAndOuterTransactionsApart() {
            LabId lab = db.newLab();
            db.transaction.executeWithoutResult(outer -> {
                db.trail.append(entry(lab, "outer"));
                propagation(TransactionDefinition.PROPAGATION_REQUIRES_NEW)
                        .executeWithoutResult(inner -> db.trail.append(entry(lab, "inner")));
                outer.setRollbackOnly();
            });

            assertThat(words(lab)).containsExactly("inner");
        }

        @Test
        void failsTheActWhenItsEntryCannotBeStored() {
            LabId lab = db.labWithEntries(1);
            LabId unknown = LabId.next();

            assertThatThrownBy(() -> db.transaction.executeWithoutResult(status -> {
                        db.trail.append(entry(lab, "of a lab"));
                        db.trail.append(entry(unknown, "of no lab"));
                    }))
                    .hasMessageContaining("has no head");
            assertThat(words(lab)).containsExactly("entry 1");
        }
    }

    @Nested
    class OnH2 extends Cases {
        @Override
        TrailDatabase open() {
            return TrailDatabase.onH2();
        }
    }

    @Nested
    class OnPostgres extends Cases {
        @Override
        TrailDatabase open() {
            return TrailDatabase.onPostgres();
        }
    }
}
