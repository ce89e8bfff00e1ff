package org.standclear.trail;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.standclear.platform.ids.LabId;

/** Somebody with the rights of the database's owner takes the guards off; verify still names the first broken entry. */
class TrailVerifyIT {

    @TestInstance(TestInstance.Lifecycle.PER_CLASS)
    abstract static class Cases {

        TrailDatabase db;

        abstract TrailDatabase open();

        @BeforeAll
        void openDatabase() {
            db = open();
            db.takeTheGuardsOff();
        }

        @AfterAll
        void closeDatabase() {
            db.close();
        }

        private void tamper(String statement, LabId lab) {
            assertThat(db.sql.update(statement, lab.value())).isPositive();
        }

        private void isBroken(LabId lab, long entry, String... words) {
            assertThat(db.trail.verify(lab)).isInstanceOfSatisfying(TrailVerification.Broken.class, broken -> {
                assertThat(broken.firstBrokenEntry()).isEqualTo(entry);
                assertThat(broken.says()).contains(words);
            });
        }

        private void copy(LabId lab, long from, long to) {
            db.sql.update(
                    "insert into trail_entries select lab, ?, at, kind, subject, actor, words, facts, previous_hash, hash"
                            + " from trail_entries where lab = ? and sequence = ?",
                    to,
                    lab.value(),
                    from);
        }

        private void replaceHash(LabId lab, long sequence) {
            StoredEntry entry = db.sql.queryForObject(
                    "select * from trail_entries where lab = ? and sequence = ?",
                    EntryRows::read,
                    lab.value(),
                    sequence);
            db.sql.update(
                    "update trail_entries set hash = ? where lab = ? and sequence = ?",
                    EntryHash.of(entry),
                    lab.value(),
                    sequence);
        }

        @Test
        void findsAWholeChainWhole() {
            LabId lab = db.labWithEntries(5);

            assertThat(db.trail.verify(lab)).isInstanceOfSatisfying(TrailVerification.Whole.class, whole -> {
                assertThat(whole.entries()).isEqualTo(5);
                assertThat(whole.lastHash())
                        .isEqualTo(db.reader.about(lab, "thing-1").get(4).hash());
            });
            assertThat(db.trail.verify(db.newLab())).isEqualTo(new TrailVerification.Whole(0, EntryHash.NONE));
        }

        @Test
        void namesAnEntryWhoseContentWasChanged() {
            for (String change : new String[] {
                "words = 'entry 4'",
                "facts = '{}'",
                "kind = 'test.undone'",
                "subject = 'thing-2'",
                "at = at + interval '1' second",
                "actor = lab",
                "previous_hash = repeat('1', 64)"
            }) {
                LabId lab = db.labWithEntries(5);
                tamper("update trail_entries set " + change + " where sequence = 3 and lab = ?", lab);
                isBroken(lab, 3, "Entry 3 was changed");
            }
        }

        @Test
        void namesTheEntryAfterOneThatWasRewrittenWithItsHash() {
            LabId lab = db.labWithEntries(5);
            tamper("update trail_entries set words = 'other' where sequence = 3 and lab = ?", lab);
            replaceHash(lab, 3);
            isBroken(lab, 4, "Entry 4 does not follow entry 3");
        }

        @Test
        void namesAnEntryThatWasTakenOut() {
            LabId lab = db.labWithEntries(5);
            tamper("delete from trail_entries where sequence = 2 and lab = ?", lab);
            isBroken(lab, 2, "Entry 2 is missing", "entry 3");

            LabId first = db.labWithEntries(3);
            tamper("delete from trail_entries where sequence = 1 and lab = ?", first);
            isBroken(first, 1, "Entry 1 is missing");
        }

        @Test
        void namesTheGapThatWasClosedByCountingAnew() {
            LabId lab = db.labWithEntries(5);
            tamper("delete from trail_entries where sequence = 2 and lab = ?", lab);
            for (int i = 3; i <= 5; i++) {
                tamper(
                        "update trail_entries set sequence = " + (i - 1) + " where sequence = " + i + " and lab = ?",
                        lab);
                replaceHash(lab, i - 1);
            }
            isBroken(lab, 2, "Entry 2 does not follow entry 1");
        }

        @Test
        void namesAnEntryThatWasPutIn() {
            LabId lab = db.labWithEntries(4);
            tamper("update trail_entries set sequence = 5 where sequence = 4 and lab = ?", lab);
            copy(lab, 2, 4);
            isBroken(lab, 4, "Entry 4 was changed");

            LabId before = db.labWithEntries(2);
            db.sql.execute("alter table trail_entries drop constraint if exists trail_entries_sequence_ck");
            copy(before, 1, 0);
            isBroken(before, 0, "before the first");
        }

        @Test
        void namesTheFirstOfTwoThatChangedPlaces() {
            LabId lab = db.labWithEntries(5);
            tamper("update trail_entries set sequence = 99 where sequence = 2 and lab = ?", lab);
            tamper("update trail_entries set sequence = 2 where sequence = 4 and lab = ?", lab);
            tamper("update trail_entries set sequence = 4 where sequence = 99 and lab = ?", lab);
            isBroken(lab, 2, "Entry 2 was changed");
        }

        @Test
        void seesThatTheEndWasCutOff() {
            LabId lab = db.labWithEntries(5);
            tamper("delete from trail_entries where sequence >= 4 and lab = ?", lab);
            isBroken(lab, 4, "Entry 4 is missing", "cut off", "entry 5");
        }

        @Test
        void seesThatAllEntriesAreGone() {
            LabId lab = db.labWithEntries(2);
            tamper("delete from trail_entries where lab = ?", lab);
            isBroken(lab, 1, "Entry 1 is missing");
        }

        @Test
        void seesAnEntryThatTheHeadDoesNotKnow() {
            LabId lab = db.labWithEntries(4);
            tamper("update trail_heads set sequence = 3 where lab = ?", lab);
            isBroken(lab, 4, "Entry 4 was added beside the application");

            LabId noHead = db.labWithEntries(2);
            tamper("delete from trail_heads where lab = ?", noHead);
            isBroken(noHead, 1, "head is missing");
        }

        @Test
        void seesThatTheLastEntryIsNotTheHeads() {
            LabId lab = db.labWithEntries(3);
            tamper("update trail_entries set words = 'other' where sequence = 3 and lab = ?", lab);
            replaceHash(lab, 3);
            isBroken(lab, 3, "is not the last entry that the lab's head names");
        }

        @Test
        void looksOnlyAtTheLabThatWasAsked() {
            LabId broken = db.labWithEntries(3);
            LabId whole = db.labWithEntries(3);
            tamper("delete from trail_entries where sequence = 2 and lab = ?", broken);

            assertThat(db.trail.verify(whole)).isInstanceOf(TrailVerification.Whole.class);
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
