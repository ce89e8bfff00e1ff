package org.standclear.signoff;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.stream.Stream;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.dao.DataAccessException;
import org.standclear.run.RunLog;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;

/** The database itself refuses to rewrite a release, whoever asks. */
class ReleaseGuardIT {

    /** What a release is about; the table's other columns say what happened to it. */
    static Stream<String> fixed() {
        return Stream.of(
                "booking_id = id",
                "cell_version = cell_version + 1",
                "revision_id = id",
                "program_sha256 = 'x'",
                "declaration_sha256 = 'x'",
                "tool = 'X-99'",
                "payload_kg = 99",
                "operator_id = id",
                "releaser_id = id",
                "code = 'ZZZZ'",
                "first_run = not first_run",
                "pass_limit = 999",
                "issued_at = issued_at - interval '1' second",
                "start_by = start_by + interval '1' second",
                "window_end = window_end + interval '1' hour",
                "last_revision = last_revision + 1",
                "last_revision = null");
    }

    abstract static class Cases extends BenchCases {

        @Autowired
        RunLog log;

        private int change(String set) {
            return jdbc.sql("update signoff_releases set " + set + " where booking_id = :booking")
                    .param("booking", scene().booking.value())
                    .update();
        }

        private void refuses(String set) {
            assertThatThrownBy(() -> change(set)).as(set).isInstanceOf(DataAccessException.class);
        }

        @ParameterizedTest
        @MethodSource("org.standclear.signoff.ReleaseGuardIT#fixed")
        void neverChangesWhatItIsAbout(String set) {
            scene().released();
            refuses(set);
        }

        @ParameterizedTest
        @ValueSource(
                strings = {
                    "used_at = null",
                    "used_at = used_at + interval '1' second",
                    "run_through_at = null",
                    "ended_at = null",
                    "live = 1",
                    "attendant_id = id",
                    "suspended_because = 'planted'"
                })
        void changesNothingOfOneThatHasEnded(String set) {
            Release release = scene().released();
            log.start(scene().booking, release.code(), scene().noor.id());
            log.watched(
                    scene().booking,
                    new RunLog.Witness(scene().hemi.id(), scene().hemi.id(), null));
            log.finish(scene().booking, 1, scene().noor.id());
            refuses(set);
        }

        @ParameterizedTest
        @ValueSource(
                strings = {
                    "lapsed_at = null, lapse_rule = null, because = null",
                    "because = 'another reason'",
                    "lapse_rule = 'incident'",
                    "live = 1, lapsed_at = null, lapse_rule = null, because = null"
                })
        void revivesNoneThatLapsed(String set) {
            scene().released();
            releases.withdraw(
                    scene().booking,
                    LapseRule.WITHDRAWN,
                    "Taken back.",
                    scene().noor.id());
            refuses(set);
        }

        @Test
        void letsHappenWhatHappensToARelease() {
            scene().released();
            assertThat(change("live = null, suspended_because = 'a swap'")).isEqualTo(1);
            assertThat(change("live = 1, suspended_because = null")).isEqualTo(1);
            assertThat(change("live = null")).as("it ran out").isEqualTo(1);
            refuses("live = 1");
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
