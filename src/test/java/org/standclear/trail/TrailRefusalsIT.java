package org.standclear.trail;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.sql.SQLException;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.standclear.platform.ids.LabId;

/** Plain SQL with the application's own rights cannot change the record either. */
class TrailRefusalsIT {

    @TestInstance(TestInstance.Lifecycle.PER_CLASS)
    abstract static class Cases {

        TrailDatabase db;
        LabId lab;

        abstract TrailDatabase open();

        @BeforeAll
        void openDatabase() {
            db = open();
            lab = db.labWithEntries(3);
        }

        @AfterAll
        void closeDatabase() {
            db.close();
        }

        @ParameterizedTest
        @ValueSource(
                strings = {
                    "update trail_entries set words = 'nothing happened'",
                    "update trail_entries set hash = hash where sequence = 3",
                    "delete from trail_entries",
                    "delete from trail_entries where sequence = 3",
                    "truncate table trail_entries",
                    "update trail_heads set sequence = 2",
                    "update trail_heads set sequence = 3, hash = repeat('0', 64)",
                    "update trail_heads set sequence = null",
                    "update trail_heads set sequence = 9",
                    "delete from trail_heads where sequence = 3",
                    "delete from labs where id in (select lab from trail_entries)",
                    "insert into trail_entries select lab, 3, at, kind, subject, actor, words, facts, previous_hash,"
                            + " hash from trail_entries where sequence = 2",
                    "insert into trail_entries select lab, 0, at, kind, subject, actor, words, facts, previous_hash,"
                            + " hash from trail_entries where sequence = 2"
                })
        void refusesToChangeWhatWasStored(String statement) {
            assertThatThrownBy(() -> db.sql.execute(statement)).hasRootCauseInstanceOf(SQLException.class);
            assertThat(db.sql.queryForObject("select count(*) from trail_entries", Long.class))
                    .isEqualTo(3);
            assertThat(db.trail.verify(lab)).isInstanceOf(TrailVerification.Whole.class);
        }
    }

    @Nested
    class OnH2 extends Cases {
        @Override
        TrailDatabase open() {
            return TrailDatabase.onH2();
        }

        @ParameterizedTest
        @ValueSource(
                strings = {
                    "merge into trail_entries key (lab, sequence) select lab, sequence, at, kind, subject, actor,"
                            + " 'other words', facts, previous_hash, hash from trail_entries",
                    "truncate table trail_entries restart identity"
                })
        void refusesTheEnginesOwnWays(String statement) {
            refusesToChangeWhatWasStored(statement);
        }
    }

    @Nested
    class OnPostgres extends Cases {
        @Override
        TrailDatabase open() {
            return TrailDatabase.onPostgres();
        }

        @ParameterizedTest
        @ValueSource(
                strings = {
                    "truncate table trail_entries cascade",
                    "truncate table trail_heads",
                    "insert into trail_entries select * from trail_entries"
                            + " on conflict (lab, sequence) do update set words = 'other words'"
                })
        void refusesTheEnginesOwnWays(String statement) {
            refusesToChangeWhatWasStored(statement);
        }
    }
}
