package org.standclear.retention;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.time.Period;
import java.util.List;
import java.util.Objects;
import java.util.UUID;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.standclear.incident.IncidentClass;
import org.standclear.platform.ids.Id;
import org.standclear.platform.ids.IncidentId;
import org.standclear.platform.retention.Concern.About;
import org.standclear.platform.retention.RecordKind;
import org.standclear.platform.time.SqlTime;
import org.standclear.report.WeekExceptions;
import org.standclear.retention.LegalHold.Target;
import org.standclear.run.Run;
import org.standclear.signoff.PaperCards;
import org.standclear.signoff.PaperCards.PaperCard;
import org.standclear.signoff.Waiver;
import org.standclear.signoff.Waivers;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;

/** Why a check was waived, what a card from paper says, what an instructor wrote beside a week: the words go, the rest stays. */
class DisposedReasonsIT {

    private static final String GONE = "Taken out at the end of its time.";

    abstract static class Cases extends RetentionCases {

        private static final KeepingTime TEN_DAYS = new KeepingTime(Period.ofDays(10), false);

        @Autowired
        Waivers waivers;

        @Autowired
        PaperCards cards;

        @Autowired
        WeekExceptions exceptions;

        private Waiver waived() {
            attachWithoutItsPart();
            return waived("Hemi weighed the peg at the bench.", ines.id());
        }

        @Test
        void takesTheReasonsOutOfAWaiverAndKeepsWhatItSetAside() {
            UUID id = waived().id();
            var taken =
                    waivers.takeBack(new Waivers.TakeBack(scene().booking, id, "Hemi weighed another peg.", ines.id()));
            assertThat(taken).isInstanceOf(Waivers.Given.Kept.class);
            List<String> by = List.of(
                    "update signoff_waivers set reason = 'x' where id = :id",
                    "update signoff_waivers set reason = 'x', words_out_at = current_timestamp where id = :id",
                    "update signoff_waivers set checks = 'reach' where id = :id",
                    "delete from signoff_waivers where id = :id",
                    "update signoff_waivers_taken_back set reason = 'x', words_out_at = current_timestamp where waiver_id = :id",
                    "delete from signoff_waivers_taken_back where waiver_id = :id");
            by.forEach(sql -> refused(sql, id));
            writtenDownInAnotherTransaction("WAIVERS", id);
            by.forEach(sql -> refused(sql, id));
            settledOtherwise(id);

            disposedAfter(RecordKind.WAIVERS, id);

            assertThat(waivers.of(scene().booking)).singleElement().satisfies(left -> {
                assertThat(left.reason()).isEqualTo(GONE);
                assertThat(left.checks()).isNotEmpty();
                assertThat(left.givenBy()).isEqualTo(ines.id());
                assertThat(Objects.requireNonNull(left.takenBack()).reason()).isEqualTo(GONE);
                assertThat(left.takenBack().by()).isEqualTo(ines.id());
            });
            refused("update signoff_waivers set reason = 'x', words_out_at = current_timestamp where id = :id", id);
        }

        @Test
        void keepsAWaiverThatMayStillBeUsedAndOneOfAPersonOnHold() {
            UUID id = waived().id();
            keepOnly(RecordKind.WAIVERS, TEN_DAYS);
            clock.moveTo(scene().now().end());
            assertThat(isDue(RecordKind.WAIVERS, id))
                    .as("it has only just ended")
                    .isFalse();
            longAfter();
            assertThat(isDue(RecordKind.WAIVERS, id)).isTrue();
            UUID hold = hold(new Target.One(About.PERSON, scene().noor.id().value()));
            assertThat(isDue(RecordKind.WAIVERS, id)).isFalse();
            assertThat(dueOf(RecordKind.WAIVERS).keptBack()).containsKey("legal hold");
            assertThat(holds.lift(hold, "done", marit.id())).isEmpty();
            assertThat(isDue(RecordKind.WAIVERS, id)).isTrue();
        }

        @Test
        void takesWhatWentOnOutOfACardFromPaperAndKeepsWhoWasThere() {
            PaperCard card = new PaperCard(
                    Id.newValue(),
                    scene().cell,
                    scene().booking,
                    clock.instant().minusSeconds(60),
                    scene().noor.id(),
                    scene().mateo.id(),
                    scene().adaeze.id(),
                    "Peg and plate, revision 1",
                    "a41e",
                    "reduced",
                    50,
                    "level 3",
                    "G-02",
                    "5",
                    "Hemi dropped a nut",
                    scene().hemi.id(),
                    clock.instant());
            is(PaperCards.Typed.Kept.class, cards.type(card));
            refused("update signoff_paper_cards set happened = 'x' where id = :id", card.id());
            refused("update signoff_paper_cards set power = 'full' where id = :id", card.id());
            refused("delete from signoff_paper_cards where id = :id", card.id());
            writtenDownInAnotherTransaction("PAPER_REMARKS", card.id());
            refused(
                    "update signoff_paper_cards set happened = 'x', words_out_at = current_timestamp where id = :id",
                    card.id());
            settledOtherwise(card.id());
            keepOnly(RecordKind.PAPER_REMARKS, TEN_DAYS);
            longAfter();
            UUID hold = hold(new Target.One(About.PERSON, scene().mateo.id().value()));
            assertThat(isDue(RecordKind.PAPER_REMARKS, card.id())).isFalse();
            assertThat(holds.lift(hold, "done", marit.id())).isEmpty();

            carriedOut(approved());

            assertThat(cards.of(scene().booking)).singleElement().satisfies(left -> {
                assertThat(left.happened()).isEqualTo(GONE);
                assertThat(left.attendant()).isEqualTo(scene().mateo.id());
                assertThat(cards.words(left)).contains("Adaeze", "a41e", GONE).doesNotContain("Hemi dropped");
            });
        }

        @Test
        void takesTheRemarkOutOfASignedLineAndKeepsTheLine() {
            states.tagOut(scene().cell, scene().hemi.id(), "cable chafe");
            longAfter();
            LocalDate monday = today().minusDays(today().getDayOfWeek().getValue() - 1L);
            var week = exceptions.week(monday);
            String remark = "Ask Hemi " + UUID.randomUUID();
            assertThat(exceptions.sign(monday, week.sha256(), remark, ines.id()))
                    .isInstanceOf(WeekExceptions.Signed.Kept.class);
            List<UUID> signed = readings(remark);
            assertThat(signed).hasSize((int) week.unread());
            UUID one = signed.get(0);
            refused("update report_exception_readings set remark = 'x' where id = :id", one);
            refused("update report_exception_readings set words = 'x' where id = :id", one);
            refused("delete from report_exception_readings where id = :id", one);
            writtenDownInAnotherTransaction("EXCEPTION_REMARKS", one);
            refused(
                    "update report_exception_readings set remark = 'x', words_out_at = current_timestamp where id = :id",
                    one);
            settledOtherwise(one);

            keepOnly(RecordKind.EXCEPTION_REMARKS, TEN_DAYS);
            longAfter();
            carriedOut(approved());

            assertThat(readings(remark)).isEmpty();
            assertThat(exceptions.week(monday).lines().stream()
                            .filter(line -> line.read() != null)
                            .toList())
                    .hasSize(signed.size())
                    .allSatisfy(line -> {
                        assertThat(line.words()).isNotEmpty();
                        assertThat(Objects.requireNonNull(line.read()).remark()).isEqualTo(GONE);
                        assertThat(line.read().by()).isEqualTo("Ines Quarryvale");
                    });
        }

        private List<UUID> readings(String remark) {
            return jdbc.sql("select id from report_exception_readings where remark = :remark order by id")
                    .param("remark", remark)
                    .query(UUID.class)
                    .list();
        }

        /** A line about a run, and one about an incident on it, as signing writes them. */
        @Test
        void keepsTheRemarkAboutWhatIsHeld() {
            Run run = running();
            IncidentId incident = reported(IncidentClass.NEAR_MISS);
            closeNow(incident);
            UUID ofRun = read("stopped-often", run.id().value());
            UUID ofBooking = read("waived", scene().booking.value());
            UUID ofIncident = read("form-overdue", incident.value());
            keepOnly(RecordKind.EXCEPTION_REMARKS, TEN_DAYS);
            longAfter();
            assertThat(List.of(ofRun, ofBooking, ofIncident)).allMatch(id -> isDue(RecordKind.EXCEPTION_REMARKS, id));

            UUID hold = hold(new Target.One(About.INCIDENT, incident.value()));
            assertThat(isDue(RecordKind.EXCEPTION_REMARKS, ofIncident)).isFalse();
            assertThat(holds.lift(hold, "done", marit.id())).isEmpty();
            hold = hold(new Target.One(About.RUN, run.id().value()));
            assertThat(List.of(ofRun, ofBooking)).noneMatch(id -> isDue(RecordKind.EXCEPTION_REMARKS, id));
            assertThat(holds.lift(hold, "done", marit.id())).isEmpty();
            hold = hold(new Target.One(About.PERSON, scene().mateo.id().value()));
            assertThat(isDue(RecordKind.EXCEPTION_REMARKS, ofRun)).isFalse();
            assertThat(holds.lift(hold, "done", marit.id())).isEmpty();
            assertThat(List.of(ofRun, ofBooking, ofIncident)).allMatch(id -> isDue(RecordKind.EXCEPTION_REMARKS, id));
        }

        private UUID read(String rule, UUID subject) {
            UUID id = UUID.randomUUID();
            jdbc.sql("""
                    insert into report_exception_readings (id, lab_id, week, rule, subject, words, remark, statement_sha256,
                        signed_by, printed_name, signed_at)
                    values (:id, :lab, :week, :rule, :subject, 'a line', 'Talk to both.', 'none', :by, 'Ines Quarryvale', :at)""")
                    .param("id", id)
                    .param("lab", everyLab.theLab().id().value())
                    .param("week", today())
                    .param("rule", rule)
                    .param("subject", subject.toString())
                    .param("by", ines.id().value())
                    .param("at", SqlTime.toSql(clock.instant()))
                    .update();
            return id;
        }

        /** So that the line planted for the test does not stand in the way of the real one. */
        private void settledOtherwise(UUID record) {
            jdbc.sql("update retention_items set state = 'GONE' where record_id = :id")
                    .param("id", record)
                    .update();
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
