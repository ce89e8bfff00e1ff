package org.standclear.core.forecast;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** Demand per day and staggering; expected numbers are computed by hand beside each case. */
class ForecastTests {

    private static final LocalDate MONDAY = LocalDate.of(2026, 11, 2);
    private static final double ROUNDING = 1e-9;

    /** Monday to Friday for that many weeks. */
    private static LabDays weekdays(int weeks, int turns) {
        Map<LocalDate, Integer> days = new HashMap<>();
        for (int day = 0; day < 7 * weeks; day++) {
            LocalDate date = MONDAY.plusDays(day);
            boolean open = date.getDayOfWeek().compareTo(DayOfWeek.FRIDAY) <= 0;
            days.put(date, open ? turns : 0);
        }
        return new LabDays(days);
    }

    private static Forecast.Day on(Forecast forecast, LocalDate day) {
        return forecast.days().stream()
                .filter(one -> one.date().equals(day))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void growsTowardsTheDueDateOverOpenDaysOnly() {
        // doubling over Thu, Fri, Mon: 1/7, 2/7, 4/7 of 21 turns
        Forecast forecast = Forecast.of(
                List.of(new DueWave("01", 7, 3, MONDAY.plusDays(7))), new Arrival(3, 2), weekdays(2, 8), Map.of());

        assertThat(on(forecast, MONDAY.plusDays(2)).wanted()).isZero();
        assertThat(on(forecast, MONDAY.plusDays(3)).wanted()).isCloseTo(3, within(ROUNDING));
        assertThat(on(forecast, MONDAY.plusDays(4)).wanted()).isCloseTo(6, within(ROUNDING));
        assertThat(on(forecast, MONDAY.plusDays(5)).wanted()).isZero();
        assertThat(on(forecast, MONDAY.plusDays(7)).wanted()).isCloseTo(12, within(ROUNDING));
        assertThat(forecast.peak().orElseThrow().date()).isEqualTo(MONDAY.plusDays(7));
        assertThat(forecast.peakUse()).isCloseTo(1.5, within(ROUNDING));
        // 4 of 21 are not given on the wanted day
        assertThat(forecast.shareNotServed()).isCloseTo(4.0 / 21, within(ROUNDING));
    }

    @Test
    void countsWhatIsTakenAlready() {
        Forecast forecast = Forecast.of(
                List.of(new DueWave("01", 4, 1, MONDAY)), new Arrival(1, 1), weekdays(1, 8), Map.of(MONDAY, 4.0));

        assertThat(on(forecast, MONDAY).use()).isCloseTo(1, within(ROUNDING));
        assertThat(forecast.shareNotServed()).isZero();
    }

    /** Eight turns, six taken by others, four wanted: two of the four are given, whatever the six do. */
    @Test
    void leavesOthersTurnsOutOfTheShareNotServed() {
        Forecast forecast = Forecast.of(
                List.of(new DueWave("01", 4, 1, MONDAY)), new Arrival(1, 1), weekdays(1, 8), Map.of(MONDAY, 6.0));

        assertThat(on(forecast, MONDAY).use()).isCloseTo(10.0 / 8, within(ROUNDING));
        assertThat(forecast.shareNotServed()).isCloseTo(2.0 / 4, within(ROUNDING));
    }

    /** A day on which only others come says nothing about the section; one that others overfill gives it nothing. */
    @Test
    void countsNeitherOthersDaysNorADayThatOthersOverfill() {
        Map<LocalDate, Double> taken = Map.of(MONDAY, 8.0, MONDAY.plusDays(2), 9.0);
        // evenly over Tue and Wed: three of six on Tuesday, given; three on Wednesday, of whose 8 turns others have 9
        Forecast forecast = Forecast.of(
                List.of(new DueWave("01", 3, 2, MONDAY.plusDays(2))), new Arrival(2, 1), weekdays(1, 8), taken);

        assertThat(forecast.shareNotServed()).isCloseTo(3.0 / 6, within(ROUNDING));
    }

    @Test
    void saysWhatHasNoOpenDayBeforeTheDueDate() {
        Forecast forecast = Forecast.of(
                List.of(new DueWave("01", 5, 2, MONDAY.minusDays(1))), Arrival.USUAL, weekdays(1, 8), Map.of());

        assertThat(forecast.withoutDay()).isEqualTo(10);
        assertThat(forecast.shareNotServed()).isEqualTo(1);
        assertThat(forecast.peak()).isEmpty();
    }

    @Test
    void nothingWantedIsNoPeak() {
        Forecast forecast = Forecast.of(List.of(), Arrival.USUAL, weekdays(1, 8), Map.of());

        assertThat(forecast.peakUse()).isZero();
        assertThat(forecast.shareNotServed()).isZero();
    }

    /** Rush Thursday: 55 people, three runs each, 27 slots a day; the demo's figures. */
    @Test
    void staggersTheRushOfThreeSections() {
        LocalDate thursday = MONDAY.plusDays(17);
        List<DueWave> together = List.of(
                new DueWave("01", 18, 3, thursday),
                new DueWave("02", 20, 3, thursday),
                new DueWave("03", 17, 3, thursday));
        LabDays lab = weekdays(5, 27);
        Staggering staggering = new Staggering(Arrival.USUAL, lab, Map.of());

        Forecast asked = Forecast.of(together, Arrival.USUAL, lab, Map.of());
        var suggested = staggering.suggest(together, thursday, thursday.plusDays(5));

        // 165 turns, of which (1 - 1/1.75) / (1 - 1.75^-10) = 0.43017 on the last day: 70.98 of 27
        assertThat(asked.peakUse()).isCloseTo(2.6288, within(0.0005));
        assertThat(suggested.forecast().peakUse()).isLessThan(1.5);
        assertThat(suggested.waves().stream().map(DueWave::due).distinct()).hasSize(3);
        assertThat(suggested.forecast().shareNotServed()).isLessThan(asked.shareNotServed());
    }

    /** A due date before every open day wants nothing of any day: that peak of 0 is no reason to leave it there. */
    @Test
    void givesTurnsWithoutADayADayBeforeItLooksAtThePeak() {
        LabDays lab = weekdays(1, 8);
        List<DueWave> past = List.of(new DueWave("01", 9, 3, MONDAY.minusDays(1)));
        Arrival lastDay = new Arrival(1, 1);
        Forecast asked = Forecast.of(past, lastDay, lab, Map.of());

        var suggested = new Staggering(lastDay, lab, Map.of()).suggest(past, MONDAY, MONDAY.plusDays(4));

        assertThat(asked.withoutDay()).isEqualTo(27);
        assertThat(asked.peakUse()).isZero();
        assertThat(suggested.forecast().withoutDay()).isZero();
        // 27 turns on one day of 8
        assertThat(suggested.forecast().peakUse()).isCloseTo(27.0 / 8, within(ROUNDING));
        assertThat(suggested.forecast().presses(asked)).isTrue();
        assertThat(asked.presses(suggested.forecast())).isFalse();
    }

    @Test
    void comparesThePeakOnlyOfAsManyTurnsWithoutADay() {
        LabDays lab = weekdays(1, 8);
        Arrival lastDay = new Arrival(1, 1);
        Forecast four = Forecast.of(List.of(new DueWave("01", 4, 1, MONDAY)), lastDay, lab, Map.of());
        Forecast eight = Forecast.of(List.of(new DueWave("01", 8, 1, MONDAY)), lastDay, lab, Map.of());

        assertThat(four.presses(eight)).isTrue();
        assertThat(eight.presses(four)).isFalse();
        assertThat(four.presses(four)).as("the same is no better").isFalse();
    }

    @Test
    void leavesDueDatesThatFitAsTheyAre() {
        List<DueWave> small = List.of(new DueWave("01", 1, 1, MONDAY.plusDays(8)));
        Staggering staggering = new Staggering(new Arrival(1, 1), weekdays(3, 8), Map.of());

        assertThat(staggering.suggest(small, MONDAY, MONDAY.plusDays(18)).waves())
                .isEqualTo(small);
    }

    /** With too many combinations to try, one after the other must still not be worse than what was asked. */
    @Test
    void spreadsManySections() {
        LocalDate due = MONDAY.plusDays(14);
        List<DueWave> twelve = java.util.stream.IntStream.range(0, 12)
                .mapToObj(section -> new DueWave("s" + section, 8, 1, due))
                .toList();
        Staggering staggering = new Staggering(new Arrival(1, 1), weekdays(4, 8), Map.of());

        var suggested = staggering.suggest(twelve, MONDAY, MONDAY.plusDays(25));

        // 12 sections of 8 turns on 20 open days of 8 turns: one a day fits
        assertThat(suggested.forecast().peakUse()).isCloseTo(1, within(ROUNDING));
    }

    @Test
    void refusesShapesThatCannotBe() {
        assertThatThrownBy(() -> new Arrival(10, Double.NaN)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new Arrival(10, Math.nextDown(1.0))).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new Arrival(0, 2)).isInstanceOf(IllegalArgumentException.class);
        assertThat(new Arrival(1, 1).growth()).isEqualTo(1);
        assertThatThrownBy(() -> new DueWave("01", -1, 1, MONDAY)).isInstanceOf(IllegalArgumentException.class);
    }
}
