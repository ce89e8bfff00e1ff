package org.standclear.incident;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.standclear.booking.BookingState;
import org.standclear.cell.CellState;
import org.standclear.cell.CellStates;
import org.standclear.cell.DayTests;
import org.standclear.cell.SampleCell;
import org.standclear.platform.ids.IncidentId;
import org.standclear.run.ResetCause;
import org.standclear.run.RunEvent;
import org.standclear.run.RunLog;
import org.standclear.signoff.Lapse;
import org.standclear.signoff.LapseRule;
import org.standclear.signoff.Release;
import org.standclear.signoff.SignoffList;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;

/** A grave incident voids what stands during a run too, and holds the cell once more when its class rises again. */
class HeldAgainIT {

    abstract static class Cases extends IncidentCases {

        private CellState state() {
            return cells.find(scene().cell).orElseThrow().state();
        }

        private void classed(IncidentId id, IncidentClass kind) {
            done(reviews.classify(
                    id,
                    new IncidentReviews.Classification(kind, Severity.DAMAGE, Severity.DAMAGE, "more is known"),
                    ines.id()));
        }

        private Object returned() {
            application
                    .getBean(DayTests.class)
                    .record(scene().cell, scene().hemi.id(), SampleCell.goodReadings());
            SampleCell.readByTwo(application, scene().cell);
            return states.returnToService(scene().cell, scene().hemi.id(), "looked over");
        }

        @Test
        void holdsTheCellAgainWhenTheClassRisesAfterTheRestart() {
            risesAfterTheRestart(Duration.ofMinutes(5));
        }

        @Test
        void holdsTheCellAgainThoughTheClockWasSetBackAfterTheRestart() {
            risesAfterTheRestart(Duration.ofMinutes(-16));
        }

        private void risesAfterTheRestart(Duration later) {
            IncidentId id = reported(IncidentClass.CONTACT);
            clock.moveBy(Duration.ofMinutes(5));
            done(reviews.take(id, ines.id()));
            done(reviews.approveRestart(id, "Nothing bent", ines.id()));
            is(CellStates.Return.Returned.class, returned());
            assertThat(state()).isEqualTo(CellState.IN_SERVICE);

            clock.moveBy(later);
            classed(id, IncidentClass.FIRST_AID);
            assertThat(state()).isEqualTo(CellState.HELD);
            assertThat(incidents.restart(id))
                    .as("that of before is worth nothing")
                    .isEmpty();
            clock.moveBy(Duration.ofMinutes(5));
            assertThat(is(CellStates.Return.Refused.class, returned()).says()).contains("restart is not approved");

            done(reviews.approveRestart(id, "Looked over once more", ines.id()));
            is(CellStates.Return.Returned.class, returned());
        }

        @Test
        void holdsNotAgainWhileTheFirstHoldWaitsForItsRestart() {
            IncidentId id = reported(IncidentClass.CONTACT);
            clock.moveBy(Duration.ofMinutes(5));
            done(reviews.take(id, ines.id()));
            classed(id, IncidentClass.FIRST_AID);
            assertThat(incidents.steps(id).stream()
                            .filter(step -> step.kind() == IncidentStep.Kind.CELL_HELD)
                            .count())
                    .isEqualTo(1);
        }

        @Test
        void voidsCheckAndSessionListOfARunThatGoesOn() {
            running();
            clock.moveBy(Duration.ofSeconds(20));
            reported(IncidentClass.CONTACT);
            log.stop(scene().cell, RunEvent.Kind.E_STOP_PRESS, scene().mateo.id());
            beginsAgainFromTheCheck();
        }

        @Test
        void voidsCheckAndSessionListOfARunThatStandsStopped() {
            running();
            clock.moveBy(Duration.ofSeconds(20));
            log.stop(scene().cell, RunEvent.Kind.E_STOP_PRESS, scene().mateo.id());
            clock.moveBy(Duration.ofSeconds(20));
            reported(IncidentClass.CONTACT);
            beginsAgainFromTheCheck();
        }

        @Test
        void keepsTheSessionListAfterAStopWithoutAnIncident() {
            running();
            log.stop(scene().cell, RunEvent.Kind.E_STOP_PRESS, scene().mateo.id());
            reset();
            assertThat(scene().state()).isEqualTo(BookingState.READY);
        }

        private void beginsAgainFromTheCheck() {
            assertThat(signed.lapses(scene().booking))
                    .filteredOn(lapse -> lapse.code().equals(LapseRule.INCIDENT.code()))
                    .extracting(Lapse::what)
                    .contains("check", "session list");
            assertThat(state()).isEqualTo(CellState.HELD);
            clock.moveBy(Duration.ofSeconds(20));
            reset();
            assertThat(scene().state()).as("neither check nor list stands").isEqualTo(BookingState.BOOKED);
            Release release = releases.latest(scene().booking).orElseThrow();
            assertThat(release.lapsed()).isNotNull();
            scene().desk.look(scene().booking);
            assertThat(scene().state()).as("checked anew").isEqualTo(BookingState.CHECKED);
            assertThat(scene().sheet().list()).isEqualTo(SignoffList.SESSION);
            assertThat(scene().sheet().signatures()).isEmpty();
        }

        private void reset() {
            is(
                    RunLog.Logged.Kept.class,
                    log.reset(
                            scene().booking,
                            ResetCause.PERSON,
                            "",
                            new RunLog.Witness(scene().hemi.id(), scene().hemi.id(), null)));
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
