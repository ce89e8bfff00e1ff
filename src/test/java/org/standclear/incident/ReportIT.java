package org.standclear.incident;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.springframework.transaction.support.TransactionTemplate;
import org.standclear.booking.BookingState;
import org.standclear.cell.CellState;
import org.standclear.cell.CellTag;
import org.standclear.incident.IncidentReports.Report;
import org.standclear.incident.IncidentReports.Reported;
import org.standclear.incident.IncidentReports.Teller;
import org.standclear.platform.ids.IncidentId;
import org.standclear.run.Run;
import org.standclear.signoff.LapseRule;
import org.standclear.signoff.Releases.StartPermission;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;
import org.standclear.trail.RecordedEntry;

/** A report does what its class asks for, at once and in its own transaction; one without a name keeps nobody. */
class ReportIT {

    abstract static class Cases extends IncidentCases {

        @Test
        void keepsANearMissWithoutHoldingAnything() {
            Run run = running();
            IncidentId id = reported(IncidentClass.NEAR_MISS);

            Incident incident = now(id);
            assertThat(incident.run()).as("the run that goes on").isEqualTo(run.id());
            assertThat(incident.formIsDue()).as("four fields are enough").isFalse();
            assertThat(incident.involved())
                    .containsExactlyInAnyOrder(
                            scene().noor.id(),
                            scene().mateo.id(),
                            scene().adaeze.id());
            assertThat(cells.find(scene().cell).orElseThrow().state()).isEqualTo(CellState.IN_SERVICE);
            assertThat(evidence.of(id)).isEmpty();
            assertThat(releases.latest(scene().booking).orElseThrow().lapsed()).isNull();
            assertRecorded(id, "incident.reported");
        }

        @ParameterizedTest
        @EnumSource(
                value = IncidentClass.class,
                names = {"CONTACT", "PROPERTY_DAMAGE", "FIRST_AID", "MEDICAL_TREATMENT", "REPORTABLE"})
        void holdsTheCellFromClassThree(IncidentClass kind) {
            var release = scene().released();
            IncidentId id = reported(kind);

            assertThat(cells.find(scene().cell).orElseThrow().state()).isEqualTo(CellState.HELD);
            assertThat(states.tags(scene().cell))
                    .filteredOn(CellTag::hangs)
                    .singleElement()
                    .satisfies(tag -> assertThat(tag.reason())
                            .as("everybody reads it, so it says no more")
                            .matches("incident \\d+ is reviewed"));
            var lapsed = java.util.Objects.requireNonNull(
                    releases.latest(scene().booking).orElseThrow().lapsed());
            assertThat(lapsed.rule()).isEqualTo(LapseRule.INCIDENT);
            assertThat(lapsed.because()).contains("Incident " + now(id).number(), kind.words());
            assertThat(scene().state()).as("without anybody looking").isEqualTo(BookingState.BOOKED);
            assertThat(signed.lapses(scene().booking)).anySatisfy(one -> {
                assertThat(one.what()).isEqualTo("check");
                assertThat(one.code()).isEqualTo("incident");
            });
            assertThat(releases.useForStart(
                            scene().booking, release.code(), scene().noor.id()))
                    .isInstanceOf(StartPermission.Refused.class);
            assertRecorded(id, "incident.reported", "incident.cell-held", "incident.evidence-frozen");
        }

        @Test
        void lapsesTheReleaseOfARunThatGoesOnAndStopsNothing() {
            running();
            IncidentId id = reported(IncidentClass.CONTACT);

            assertThat(scene().state()).as("people stop an arm, not this").isEqualTo(BookingState.RUNNING);
            assertThat(releases.latest(scene().booking).orElseThrow().lapsed()).isNotNull();
            assertThat(now(id).booking()).isEqualTo(scene().booking);
            assertThat(states.tags(scene().cell).get(0).causedBy())
                    .isEqualTo(scene().noor.id());
        }

        @Test
        void lapsesTheCheckOfABookingThatIsAhead() {
            var later = scene().lab.booked(scene().cell, "2026-03-11T13:07:00Z", scene().mateo, scene().noor);
            scene().preparation
                    .attach(
                            later.id(),
                            scene().uploadBy(scene().mateo, "Later").id(),
                            scene().mateo.id());
            scene().desk.look(later.id());
            assertThat(scene().bookings.find(later.id()).orElseThrow().state()).isEqualTo(BookingState.CHECKED);

            reported(IncidentClass.CONTACT);

            assertThat(scene().bookings.find(later.id()).orElseThrow().state()).isEqualTo(BookingState.BOOKED);
            assertThat(signed.lapses(later.id()))
                    .anySatisfy(one -> assertThat(one.because()).contains("contact without injury"));
        }

        @Test
        void keepsNothingWhenTheTransactionFails() {
            scene().released();
            var transaction = new TransactionTemplate(transactions);
            int before = states.tags(scene().cell).size();
            List<IncidentId> ids = new ArrayList<>();
            transaction.executeWithoutResult(status -> {
                ids.add(reported(IncidentClass.CONTACT));
                status.setRollbackOnly();
            });

            assertThat(incidents.find(ids.get(0))).isEmpty();
            assertThat(states.tags(scene().cell)).hasSize(before);
            assertThat(scene().state()).isEqualTo(BookingState.RELEASED);
            assertThat(releases.latest(scene().booking).orElseThrow().lapsed()).isNull();
        }

        @Test
        void storesNobodyForAReportWithoutAName() {
            running();
            Reported.Kept sent = kept(send(IncidentClass.NEAR_MISS, new Teller.Anonymous()));

            Incident incident = now(sent.incident());
            assertThat(incident.reporter()).isNull();
            assertThat(incident.anonymous()).isTrue();
            assertThat(incidents.byReceipt(
                            java.util.Objects.requireNonNull(sent.receipt()).toLowerCase()))
                    .contains(incident);
            assertThat(incidents.byReceipt("AAAA-AAAA-AAAA")).isEmpty();
            assertThat(recordOf(sent.incident())).isNotEmpty().allSatisfy(entry -> {
                assertThat(entry.actor()).isNull();
                assertThat(entry.factsText() + entry.words())
                        .doesNotContain(scene().hemi.id().toString());
            });
            assertThat(everythingKeptAbout(sent.incident()))
                    .as("the receipt itself is kept nowhere")
                    .doesNotContain(sent.receipt());
        }

        private String everythingKeptAbout(IncidentId id) {
            List<Map<String, Object>> rows = new ArrayList<>();
            rows.addAll(jdbc.sql("select * from incidents where id = :id")
                    .param("id", id.value())
                    .query()
                    .listOfRows());
            rows.addAll(jdbc.sql("select * from incident_steps where incident_id = :id")
                    .param("id", id.value())
                    .query()
                    .listOfRows());
            return rows
                    + recordOf(id).stream()
                            .map(RecordedEntry::factsText)
                            .toList()
                            .toString();
        }

        @Test
        void asksForANameWhereTheCellIsHeld() {
            Reported reported = send(IncidentClass.CONTACT, new Teller.Anonymous());

            assertThat(is(Reported.Refused.class, reported).says()).contains("a hold carries a name");
            assertThat(cells.find(scene().cell).orElseThrow().state()).isEqualTo(CellState.IN_SERVICE);
        }

        @Test
        void holdsForTheBenchScreenAndStillKeepsNobody() {
            Reported.Kept sent = kept(send(
                    IncidentClass.CONTACT, new Teller.AtScreen(scene().screen.id())));

            assertThat(now(sent.incident()).reporter()).isNull();
            assertThat(states.tags(scene().cell).get(0).placedBy())
                    .isEqualTo(scene().screen.id());
            assertThat(sent.receipt()).isNotNull();
        }

        @Test
        void closesAPrecautionaryStopAtOnce() {
            Incident incident = now(reported(IncidentClass.PRECAUTIONARY_STOP));

            assertThat(incident.state()).isEqualTo(IncidentState.CLOSED);
            assertThat(incident.formDueAt()).isNull();
        }

        @Test
        void refusesWhatHasNotHappenedYet() {
            Instant ahead = clock.instant().plus(Duration.ofHours(1));
            Reported reported = reports.report(new Report(
                    scene().cell, IncidentClass.NEAR_MISS, "Later", ahead, new Teller.Anonymous(), null, null));

            assertThat(is(Reported.Refused.class, reported).field()).isEqualTo("happened");
        }

        @Test
        void findsNoRunLongAfterOne() {
            running();
            log.finish(scene().booking, 5, scene().noor.id());
            for (var item : org.standclear.run.CloseOutItem.values()) {
                log.closeOut(
                        scene().booking,
                        item,
                        item.choices().get(0).value(),
                        scene().mateo.id());
            }
            clock.moveBy(Duration.ofMinutes(29));
            assertThat(now(reported(IncidentClass.NEAR_MISS)).run()).isNotNull();
            clock.moveBy(Duration.ofMinutes(2));
            assertThat(now(reported(IncidentClass.NEAR_MISS)).run()).isNull();
        }

        @Test
        void fillsTheFormAndRaisesTheClassByIt() {
            scene().released();
            IncidentId id = reported(IncidentClass.PROTECTIVE_STOP);
            assertThat(now(id).formIsDue()).isTrue();

            assertThat(refused(reports.fill(
                            id, IncidentClass.NEAR_MISS, FORM, scene().hemi.id())))
                    .contains("does not lower");
            done(reports.fill(
                    id, IncidentClass.PROPERTY_DAMAGE, FORM, scene().hemi.id()));

            Incident incident = now(id);
            assertThat(incident.formIsDue()).isFalse();
            assertThat(incident.form()).isEqualTo(FORM);
            assertThat(cells.find(scene().cell).orElseThrow().state()).isEqualTo(CellState.HELD);
            assertThat(scene().state()).isEqualTo(BookingState.BOOKED);
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
