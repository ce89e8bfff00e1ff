package org.standclear.report.records;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.standclear.incident.IncidentClass;
import org.standclear.incident.IncidentReports;
import org.standclear.incident.IncidentReports.Report;
import org.standclear.incident.IncidentReports.Teller;
import org.standclear.incident.ReporterPart;
import org.standclear.platform.lab.Labs;
import org.standclear.run.ResetCause;
import org.standclear.run.RunEvent;
import org.standclear.run.RunLog;
import org.standclear.signoff.BenchCases;
import org.standclear.signoff.Release;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;

/** What counts as an event between starts: everything that may have gone wrong, once. */
class TermEventsIT {

    abstract static class Cases extends BenchCases {

        @Autowired
        ExposureRows rows;

        @Autowired
        RunLog log;

        @Autowired
        IncidentReports reports;

        @Autowired
        Labs everyLab;

        private int events() {
            LocalDate day = LocalDate.of(2026, 3, 11);
            Instant from = Instant.parse("2026-03-11T00:00:00Z");
            Instant until = from.plus(Duration.ofDays(1));
            return rows.events(new Days(everyLab.theLab().id(), from, until, day, day))
                    .size();
        }

        private void startedAndPressed() {
            Release release = scene().released();
            log.start(scene().booking, release.code(), scene().noor.id());
            clock.moveBy(Duration.ofMinutes(1));
            log.stop(scene().cell, RunEvent.Kind.E_STOP_PRESS, scene().mateo.id());
        }

        private RunLog.Logged reset(ResetCause cause) {
            return log.reset(
                    scene().booking,
                    cause,
                    "looked at it",
                    new RunLog.Witness(scene().adaeze.id(), scene().adaeze.id(), null));
        }

        @Test
        void aPressCountsUntilItsResetSaysThatNothingWasWrong() {
            int before = events();
            startedAndPressed();
            assertThat(events()).as("nobody knows the cause yet").isEqualTo(before + 1);
            assertThat(reset(ResetCause.PRECAUTION)).isInstanceOf(RunLog.Logged.Kept.class);
            assertThat(events()).as("a precaution").isEqualTo(before);
        }

        @Test
        void aPressForACauseCountsOnceThoughItWasReportedToo() {
            int before = events();
            startedAndPressed();
            report(IncidentClass.PROTECTIVE_STOP);
            assertThat(events()).isEqualTo(before + 1);
            report(IncidentClass.NEAR_MISS);
            assertThat(events()).isEqualTo(before + 2);
            report(IncidentClass.OBSERVATION);
            assertThat(events()).isEqualTo(before + 2);
        }

        @Test
        void aStopThatWasReportedButNotLoggedCounts() {
            int before = events();
            report(IncidentClass.PROTECTIVE_STOP);
            assertThat(events()).isEqualTo(before + 1);
        }

        private void report(IncidentClass kind) {
            Teller noor = new Teller.Named(scene().noor.id(), ReporterPart.SAW_IT);
            assertThat(reports.report(Report.brief(scene().cell, kind, "The arm ran into the fixture.", noor)))
                    .isInstanceOf(IncidentReports.Reported.Kept.class);
        }
    }

    /** The numbers of starts are counted by hand. */
    @Test
    void startsAreCountedFromOneEventToTheNext() {
        Instant noon = Instant.parse("2026-03-11T12:00:00Z");
        List<Instant> starts = List.of(noon, noon.plusSeconds(60), noon.plusSeconds(120), noon.plusSeconds(300));
        List<Instant> events = List.of(noon.plusSeconds(70), noon.plusSeconds(120), noon.plusSeconds(130));
        var between = JdbcTermReports.between(starts, events);
        assertThat(between.gaps()).containsExactly(2, 1, 0);
        assertThat(between.sinceLast()).isEqualTo(1);
        assertThat(JdbcTermReports.between(starts, List.of()).sinceLast()).isEqualTo(4);
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
