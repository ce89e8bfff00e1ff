package org.standclear.retention;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Duration;
import java.util.List;
import java.util.Objects;
import java.util.UUID;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.dao.DataAccessException;
import org.standclear.incident.IncidentClass;
import org.standclear.platform.ids.IncidentId;
import org.standclear.platform.retention.Concern.About;
import org.standclear.platform.retention.RecordKind;
import org.standclear.retention.LegalHold.Target;
import org.standclear.signoff.Lapse;
import org.standclear.signoff.LapseRule;
import org.standclear.signoff.Part;
import org.standclear.signoff.Release;
import org.standclear.signoff.Sheet;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;

/** Why something lapsed repeats what people wrote on tags, and their names: the words go at their end, the rule stays. */
class DisposedLapsesIT {

    private static final String GONE = "Taken out at the end of its time.";

    abstract static class Cases extends RetentionCases {

        private UUID releaseLapsedByATag() {
            scene().released();
            states.tagOut(scene().cell, scene().mateo.id(), "Hemi chafed the cable");
            scene().desk.look(scene().booking);
            return lapse("release");
        }

        private UUID lapse(String what) {
            return jdbc.sql("select id from signoff_lapses where booking_id = :booking and what = :what")
                    .param("booking", scene().booking.value())
                    .param("what", what)
                    .query(UUID.class)
                    .single();
        }

        private Release release() {
            return releases.latest(scene().booking).orElseThrow();
        }

        private UUID releaseId() {
            return release().id().value();
        }

        /** So that the line planted for the test does not stand in the way of the real one. */
        private void settledOtherwise(UUID record) {
            jdbc.sql("update retention_items set state = 'GONE' where record_id = :id")
                    .param("id", record)
                    .update();
        }

        @Test
        void takesTheWordsOutAndKeepsTheRule() {
            UUID id = releaseLapsedByATag();
            assertThat(Objects.requireNonNull(release().lapsed()).because()).contains("Hemi chafed");
            List<String> ofLapse = List.of(
                    "update signoff_lapses set because = 'x' where id = :id",
                    "update signoff_lapses set because = 'x', words_out_at = current_timestamp where id = :id",
                    "update signoff_lapses set code = 'x' where id = :id",
                    "delete from signoff_lapses where id = :id");
            String ofRelease =
                    "update signoff_releases set because = 'x', words_out_at = current_timestamp where id = :id";
            ofLapse.forEach(sql -> refused(sql, id));
            refused(ofRelease, releaseId());
            writtenDownInAnotherTransaction("LAPSES", id);
            ofLapse.forEach(sql -> refused(sql, id));
            refused(ofRelease, releaseId());
            settledOtherwise(id);

            disposedAfter(RecordKind.LAPSES, id);

            assertThat(Objects.requireNonNull(release().lapsed())).satisfies(lapsed -> {
                assertThat(lapsed.because()).isEqualTo(GONE);
                assertThat(lapsed.rule()).isEqualTo(LapseRule.CELL_NOT_IN_SERVICE);
            });
            assertThat(signed.lapses(scene().booking))
                    .extracting(Lapse::code, Lapse::because)
                    .containsExactly(org.assertj.core.groups.Tuple.tuple("cell-not-in-service", GONE));
            refused(ofRelease, releaseId());
            refused("update signoff_lapses set because = 'x', words_out_at = current_timestamp where id = :id", id);
        }

        /** The line that opens the guard for the words opens it for nothing else, and for no other release. */
        @Test
        void letsNothingElseOfAReleaseChangeWithItsWords() {
            UUID id = releaseLapsedByATag();
            for (String other : List.of("code = 'ZZZZ'", "lapsed_at = lapsed_at + interval '1' hour", "tool = 'X'")) {
                assertThatThrownBy(
                                () -> inOneTransaction(id, "because = 'x', words_out_at = current_timestamp, " + other))
                        .as(other)
                        .isInstanceOf(DataAccessException.class);
            }
            assertThatThrownBy(() -> inOneTransaction(id, "because = 'x'"))
                    .as("without saying when")
                    .isInstanceOf(DataAccessException.class);
            assertThatThrownBy(() ->
                            inOneTransaction(UUID.randomUUID(), "because = 'x', words_out_at = current_timestamp"))
                    .as("written down of another lapse")
                    .isInstanceOf(DataAccessException.class);
            assertThat(inOneTransaction(id, "because = 'x', words_out_at = current_timestamp"))
                    .isEqualTo(1);
        }

        private int inOneTransaction(UUID lapse, String set) {
            UUID release = releaseId();
            return Objects.requireNonNull(
                    new org.springframework.transaction.support.TransactionTemplate(transactions).execute(status -> {
                        writtenDownInAnotherTransaction("LAPSES", lapse);
                        return jdbc.sql("update signoff_releases set " + set + " where id = :id")
                                .param("id", release)
                                .update();
                    }));
        }

        @Test
        void takesTheWordsOutOfTheHandoverToo() {
            scene().released();
            scene().bookings
                    .nameAttendant(
                            scene().booking,
                            scene().lab.student("Tal Emberley").id(),
                            scene().noor.id());
            scene().desk.look(scene().booking);
            UUID id = lapse("attendant");
            clock.moveBy(Duration.ofMinutes(10));
            scene().desk.look(scene().booking);
            assertThat(handover()).contains("Tal Emberley");
            assertThat(suspended()).contains("Tal Emberley");
            disposedAfter(RecordKind.LAPSES, id);
            assertThat(handover()).isEqualTo(GONE);
            assertThat(suspended()).isEqualTo(GONE);
            assertThat(count("signoff_handovers", "booking_id", scene().booking.value()))
                    .isEqualTo(1);
        }

        private String handover() {
            return jdbc.sql("select because from signoff_handovers where booking_id = :id")
                    .param("id", scene().booking.value())
                    .query(String.class)
                    .single();
        }

        private String suspended() {
            return jdbc.sql("select suspended_because from signoff_releases where booking_id = :id")
                    .param("id", scene().booking.value())
                    .query(String.class)
                    .single();
        }

        @Test
        void takesTheWordsOutOfTheListThatWasMadeVoid() {
            scene().ready();
            scene().answerAndSign(Part.OPERATOR, scene().noor);
            states.tagOut(scene().cell, scene().mateo.id(), "Hemi chafed the cable");
            scene().desk.look(scene().booking);
            UUID lapse = lapse("bench list");
            assertThat(why(closed(Sheet.Outcome.VOID)))
                    .isEqualTo(signed.lapses(scene().booking).get(0).because());

            disposedAfter(RecordKind.LAPSES, lapse);

            assertThat(why(closed(Sheet.Outcome.VOID))).isEqualTo(GONE);
            assertThat(why(closed(Sheet.Outcome.DONE))).as("it says nothing").isEmpty();
        }

        private Sheet closed(Sheet.Outcome outcome) {
            return signed.sheets(scene().booking).stream()
                    .filter(sheet -> !sheet.open())
                    .filter(sheet -> Objects.requireNonNull(sheet.closed()).outcome() == outcome)
                    .findFirst()
                    .orElseThrow();
        }

        private static String why(Sheet sheet) {
            return Objects.requireNonNull(sheet.closed()).because();
        }

        @Test
        void keepsTheWordsOfWhatIsHeldAndOfAnOpenIncident() {
            UUID id = releaseLapsedByATag();
            IncidentId incident = reported(IncidentClass.OBSERVATION);
            jdbc.sql("update incidents set booking_id = :booking, run_id = null where id = :id")
                    .param("booking", scene().booking.value())
                    .param("id", incident.value())
                    .update();
            closeNow(incident);
            keepOnly(RecordKind.LAPSES, KeepingTime.years(1));
            longAfter();
            assertThat(isDue(RecordKind.LAPSES, id)).isTrue();
            for (Target.One target : List.of(
                    new Target.One(About.INCIDENT, incident.value()),
                    new Target.One(About.PERSON, scene().mateo.id().value()),
                    new Target.One(About.PERSON, scene().adaeze.id().value()))) {
                UUID hold = hold(target);
                assertThat(isDue(RecordKind.LAPSES, id)).as("%s", target).isFalse();
                assertThat(dueOf(RecordKind.LAPSES).keptBack()).containsKey("legal hold");
                assertThat(holds.lift(hold, "done", marit.id())).isEmpty();
            }
            assertThat(isDue(RecordKind.LAPSES, id)).isTrue();
            jdbc.sql("update incidents set state = 'IN_REVIEW', closed_at = null, reviewer = :by where id = :id")
                    .param("by", scene().mateo.id().value())
                    .param("id", incident.value())
                    .update();
            assertThat(isDue(RecordKind.LAPSES, id)).as("open again").isFalse();
            closeNow(incident);
        }
    }

    @Nested
    @OnH2
    @Keeping
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    @Keeping
    class OnPostgresEngine extends Cases {}
}
