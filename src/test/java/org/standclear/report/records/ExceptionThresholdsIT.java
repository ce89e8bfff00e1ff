package org.standclear.report.records;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.Map;
import java.util.UUID;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.standclear.incident.IncidentClass;
import org.standclear.platform.ids.IncidentId;
import org.standclear.run.Run;
import org.standclear.run.RunEvent;
import org.standclear.signoff.Part;
import org.standclear.signoff.Release;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;

/** Rules of the week's exceptions at their threshold and one step below it; tests share the week and look at their own rows. */
class ExceptionThresholdsIT {

    abstract static class Cases extends ExceptionCases {

        /** A contact's form is due four hours after the report (design: incidents, the table of classes). */
        @Test
        void findsAFormFromTheHourOnByWhichItIsLate() {
            IncidentId incident = reported(IncidentClass.CONTACT);
            UUID id = incident.value();
            clock.moveBy(Duration.ofHours(4));
            assertThat(ids("form-overdue")).as("due now").doesNotContain(id);
            clock.moveBy(Duration.ofMinutes(59));
            assertThat(ids("form-overdue")).as("59 minutes late").doesNotContain(id);
            clock.moveBy(Duration.ofMinutes(1));
            assertThat(ids("form-overdue")).as("an hour late").contains(id);
            assertThat(ids("form-overdue", 2)).doesNotContain(id);
            assertThat(found("form-overdue", 1))
                    .filteredOn(one -> one.id().equals(id))
                    .singleElement()
                    .satisfies(one -> {
                        assertThat(one.measure()).isEqualTo(1);
                        assertThat(one.href()).isEqualTo("/incidents/" + id);
                    });
            done(reports.fill(
                    incident, IncidentClass.CONTACT, FORM, scene().hemi.id()));
            clock.moveBy(Duration.ofHours(5));
            assertThat(ids("form-overdue")).as("late is late, filled in or not").contains(id);
            assertThat(ids("form-overdue", 2)).as("it waits no longer").doesNotContain(id);
        }

        @Test
        void findsNoFormThatCameInTime() {
            IncidentId incident = reported(IncidentClass.CONTACT);
            clock.moveBy(Duration.ofHours(3));
            done(reports.fill(
                    incident, IncidentClass.CONTACT, FORM, scene().hemi.id()));
            clock.moveBy(Duration.ofHours(20));
            assertThat(ids("form-overdue")).doesNotContain(incident.value());
        }

        @Test
        void findsARunFromItsSecondStopOn() {
            Run run = running();
            UUID id = run.id().value();
            assertThat(ids("stopped-often")).as("not stopped").doesNotContain(id);
            log.stop(scene().cell, RunEvent.Kind.E_STOP_PRESS, scene().mateo.id());
            assertThat(ids("stopped-often", 2)).as("stopped once").doesNotContain(id);
            log.stop(scene().cell, RunEvent.Kind.E_STOP_PRESS, scene().hemi.id());
            assertThat(ids("stopped-often", 2)).as("stopped twice").contains(id);
            assertThat(ids("stopped-often", 3)).doesNotContain(id);
        }

        @Test
        void findsABookingFromItsSecondAnswerThatDisagreedOn() {
            UUID booking = scene().booking.value();
            scene().ready();
            scene().enter(Part.OPERATOR, scene().noor, 2, Map.of("power", "reduced", "override", "60"));
            assertThat(ids("read-again", 2)).as("read again once").doesNotContain(booking);
            scene().enter(Part.OPERATOR, scene().noor, 2, Map.of("power", "reduced", "override", "70"));
            assertThat(found("read-again", 2))
                    .filteredOn(one -> one.id().equals(booking))
                    .singleElement()
                    .satisfies(one -> {
                        assertThat(one.measure()).isEqualTo(2);
                        assertThat(one.href()).isEqualTo("/bookings/" + booking);
                    });
            assertThat(ids("read-again", 3)).doesNotContain(booking);
        }

        /** Of a release that was used, and only by the lot that its id draws. */
        @Test
        void drawsTheSpotAuditAmongRunsThatStarted() {
            Release release = scene().released();
            UUID id = release.id().value();
            assertThat(ids("spot-audit")).as("not started").doesNotContain(id);
            log.start(scene().booking, release.code(), scene().noor.id());
            assertThat(ids("spot-audit")).as("one in one").contains(id);
            int misses = IntStream.range(2, 1_000)
                    .filter(oneIn -> !ExceptionRows.drawn(id, oneIn))
                    .findFirst()
                    .orElseThrow();
            assertThat(ids("spot-audit", misses)).as("one in %d", misses).doesNotContain(id);
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
