package org.standclear.signoff;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.LocalDate;
import java.util.Map;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.standclear.booking.BookingState;
import org.standclear.cell.CellRegister;
import org.standclear.cell.Cells;
import org.standclear.cell.DayTestReadings;
import org.standclear.cell.DayTests;
import org.standclear.cell.DutyDefaults;
import org.standclear.cell.DutyDue;
import org.standclear.cell.RecurringDuties;
import org.standclear.cell.RecurringDuties.Kept;
import org.standclear.cell.RecurringDuties.RecordDuty;
import org.standclear.cell.RecurringDuty;
import org.standclear.cell.SampleCell;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.time.LabTime;
import org.standclear.signoff.SignoffDesk.Signed;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;

/** What comes round on a cell gates its releases when it is late, and says who can mend it. */
class CellDutiesIT {

    abstract static class Cases extends BenchCases {

        @Autowired
        RecurringDuties duties;

        @Autowired
        DutyDefaults defaults;

        @Autowired
        DayTests dayTests;

        @Autowired
        CellRegister register;

        @Autowired
        Cells cells;

        @Autowired
        LabTime labTime;

        private LocalDate today() {
            return labTime.date(clock.instant());
        }

        private void every(RecurringDuty duty, int days) {
            duties.setInterval(
                    scene().cell, duty, days, "college rule", scene().adaeze.id());
        }

        private Kept done(RecurringDuty duty, LocalDate on) {
            return duties.record(new RecordDuty(
                    scene().cell,
                    duty,
                    on,
                    "Hemi Coppergate",
                    "in order",
                    scene().adaeze.id()));
        }

        private java.util.List<String> codes() {
            return scene().desk.look(scene().booking).obstacles().stream()
                    .map(Obstacle::code)
                    .toList();
        }

        private void refusesRelease(RecurringDuty duty, String code, String words) {
            scene().awaitsReleaser();
            scene().answer(Part.RELEASER, scene().adaeze, scene().adaeze);
            every(duty, 30);
            is(Kept.Recorded.class, done(duty, today().minusDays(31)));
            Signed.Refused refused = is(Signed.Refused.class, scene().sign(Part.RELEASER, scene().adaeze));
            assertThat(refused.obstacles()).anySatisfy(obstacle -> {
                assertThat(obstacle.code()).isEqualTo(code);
                assertThat(obstacle.says()).contains("is overdue").contains(words);
                assertThat(obstacle.mend()).contains("record it on the page of Avocet");
            });
            assertThat(scene().state()).isNotEqualTo(BookingState.RELEASED);

            is(Kept.Recorded.class, done(duty, today()));
            is(Signed.Released.class, scene().sign(Part.RELEASER, scene().adaeze));
        }

        @Test
        void refusesAReleaseWhileTheInspectionIsOverdue() {
            refusesRelease(RecurringDuty.INSPECTION, "inspection-overdue", "inspection");
        }

        @Test
        void refusesAReleaseWhileTheRiskAssessmentIsPastItsReview() {
            refusesRelease(RecurringDuty.RISK_ASSESSMENT, "risk-assessment-overdue", "risk-assessment review");
        }

        @Test
        void isLateFromTheDayAfterItsDate() {
            scene().attached();
            every(RecurringDuty.INSPECTION, 30);
            done(RecurringDuty.INSPECTION, today().minusDays(30));
            assertThat(codes()).as("on its day").doesNotContain("inspection-overdue");
            assertThat(duties.due(scene().cell).get(0).due()).isEqualTo(today());
            every(RecurringDuty.INSPECTION, 29);
            assertThat(codes()).as("a day after").contains("inspection-overdue");
            assertThat(duties.intervals(scene().cell))
                    .filteredOn(one -> one.duty() == RecurringDuty.INSPECTION)
                    .extracting("days")
                    .containsExactly(29, 30, DutyDefaults.COMMON_PRACTICE_DAYS);
        }

        @Test
        void isDueAtOnceWhenItWasSetAndNeverRecorded() {
            scene().attached();
            assertThat(codes()).isEmpty();
            every(RecurringDuty.RISK_ASSESSMENT, 365);
            assertThat(duties.due(scene().cell))
                    .filteredOn(due -> due.duty() == RecurringDuty.RISK_ASSESSMENT)
                    .singleElement()
                    .satisfies(due -> {
                        assertThat(due.due()).isEqualTo(today());
                        assertThat(due.overdue(today().plusDays(1))).isTrue();
                    });
        }

        @Test
        void givesANewCellItsDutiesDueAYearLater() {
            scene().attached();
            assertThat(duties.due(scene().cell))
                    .extracting(DutyDue::duty)
                    .containsExactly(RecurringDuty.INSPECTION, RecurringDuty.RISK_ASSESSMENT);
            assertThat(duties.due(scene().cell)).allSatisfy(due -> {
                assertThat(due.lastDone()).isNull();
                assertThat(due.due()).isEqualTo(today().plusDays(DutyDefaults.COMMON_PRACTICE_DAYS));
                assertThat(due.overdue(due.due())).isFalse();
                assertThat(due.overdue(due.due().plusDays(1))).isTrue();
            });
            assertThat(codes()).isEmpty();
        }

        @Test
        void givesLaterCellsWhatWasSetAndLeavesTheOthersAlone() {
            PersonId ines = scene().hemi.id();
            defaults.change(RecurringDuty.INSPECTION, 90, "the college's rule", ines);
            defaults.change(RecurringDuty.RISK_ASSESSMENT, 0, "set on each cell", ines);
            try {
                assertThat(duties.due(scene().lab.cell(0))).singleElement().satisfies(due -> {
                    assertThat(due.duty()).isEqualTo(RecurringDuty.INSPECTION);
                    assertThat(due.due()).isEqualTo(today().plusDays(90));
                });
                assertThat(duties.due(scene().cell)).hasSize(2);
                assertThat(defaults.history()).extracting("reason").contains("the college's rule", "set on each cell");
            } finally {
                for (RecurringDuty duty : RecurringDuty.values()) {
                    defaults.change(duty, DutyDefaults.COMMON_PRACTICE_DAYS, "as before", ines);
                }
            }
        }

        @Test
        void refusesADayThatIsStillToCome() {
            assertThat(is(Kept.Refused.class, done(RecurringDuty.INSPECTION, today().plusDays(1)))
                            .field())
                    .isEqualTo("on");
        }

        @Test
        void asksForTheDayTestAgainWhenTheLimitsChanged() {
            String name = cells.find(scene().cell).orElseThrow().name();
            String other = SampleCell.file(name, 2).replace("override-percent: 50", "override-percent: 40");
            register.approve(SampleCell.proposed(register, scene().cell, other), PersonId.next(), 1);
            assertThat(cells.obstacles(scene().cell, clock.instant()))
                    .extracting(Cells.Obstacle::code)
                    .containsExactly("day-test-other-limits");
            dayTests.record(scene().cell, scene().adaeze.id(), readings("pillar by the door", 40));
            assertThat(cells.obstacles(scene().cell, clock.instant())).isEmpty();
        }

        @Test
        void keepsTheDayTestWhenNoLimitChanged() {
            String name = cells.find(scene().cell).orElseThrow().name();
            String same = SampleCell.file(name, 2).replace("overhang-mm: 15", "overhang-mm: 16");
            register.approve(SampleCell.proposed(register, scene().cell, same), PersonId.next(), 1);
            assertThat(cells.obstacles(scene().cell, clock.instant())).isEmpty();
        }

        @Test
        void letsTheStationsTakeTurns() {
            assertThat(dayTests.lastOn(scene().cell, "pillar by the door"))
                    .as("today's own test is no reason")
                    .isEmpty();
            clock.moveBy(Duration.ofDays(1));
            assertThat(dayTests.lastOn(scene().cell, " Pillar by the door ")).isPresent();
            assertThat(dayTests.lastOn(scene().cell, "bench edge")).isEmpty();
            dayTests.record(
                    scene().cell,
                    scene().adaeze.id(),
                    readings("pillar by the door", 50),
                    "the bench edge is repaired");
            assertThat(jdbc.sql(
                                    "select station_reason from cell_day_tests where cell_id = :cell order by tested_at desc")
                            .params(Map.of("cell", scene().cell.value()))
                            .query(String.class)
                            .list())
                    .startsWith("the bench edge is repaired");
        }

        private DayTestReadings readings(String station, double override) {
            return new DayTestReadings(station, true, false, true, "reduced", "level 3", override, "G-02", true);
        }

        @Test
        void lapsesAReleaseWhenADayTestWasMadeSince() {
            Release release = scene().released();
            clock.moveBy(Duration.ofSeconds(20));
            dayTests.record(scene().cell, scene().adaeze.id(), readings("bench edge", 50));
            scene().desk.look(scene().booking);
            Release after = releases.latest(scene().booking).orElseThrow();
            assertThat(after.id()).isEqualTo(release.id());
            assertThat(java.util.Objects.requireNonNull(after.lapsed()).rule()).isEqualTo(LapseRule.VALUES_CHANGED);
            assertThat(scene().sheet().brief()).as("the values are read again").isFalse();
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
