package org.standclear.core.forecast;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * The simulation against a table that two other programs computed and agreed on (3,000 days each, seeds unknown), and
 * against what queueing theory says without any chance.
 */
class ReleaseSimulationTests {

    private static final int DAYS = 3000;
    private static final long SEED = 20_261_127;

    /** The table's values and ours both scatter, each with our standard error; three of their joint ones are allowed. */
    private static final double JOINT_ERRORS = 3 * Math.sqrt(2);

    /** The table shows minutes to a tenth and shares to a hundredth. */
    private static final double SHOWN_MINUTES = 0.05;

    private static final double SHOWN_SHARE = 0.005;

    /** Rounding in adding up a few hundred minutes. */
    private static final double EXACT = 1e-9;

    private static ReleaseDay day(List<Double> starts, int technicians) {
        return new ReleaseDay(30, 9, starts, technicians, 8);
    }

    private static BenchSteps withoutChance(double service) {
        return new BenchSteps(
                StepTime.Triangular.always(6),
                StepTime.Triangular.always(service - 1),
                StepTime.Triangular.always(1),
                0,
                4);
    }

    private static void agrees(Estimate ours, double table, double shown) {
        assertThat(ours.standardError()).isPositive();
        assertThat(ours.value()).isCloseTo(table, within(shown + JOINT_ERRORS * ours.standardError()));
    }

    @ParameterizedTest
    @CsvSource({
        "'0,0',       1, 2.2,  6.3, 0.34, 0.39",
        "'0,0,0,0',   1, 7.5, 16.5, 0.63, 0.78",
        "'0,7,15,22', 1, 0.8,  2.9, 0.04, 0.78",
        "'0,0,0,0',   2, 2.0,  5.6, 0.32, 0.39"
    })
    void reproducesTheReferenceTable(
            String starts, int technicians, double mean, double ninetieth, double shortRuns, double busy) {
        List<Double> offsets =
                List.of(starts.split(",")).stream().map(Double::valueOf).toList();

        ReleaseWaits waits = new ReleaseSimulation(day(offsets, technicians), BenchSteps.ESTIMATED).play(DAYS, SEED);

        agrees(waits.meanWait(), mean, SHOWN_MINUTES);
        agrees(waits.ninetiethWait(), ninetieth, SHOWN_MINUTES);
        agrees(waits.shortRuns(), shortRuns, SHOWN_SHARE);
        agrees(waits.busy(), busy, SHOWN_SHARE);
    }

    @Test
    void isPreciseEnoughToTellTheRowsApart() {
        ReleaseWaits waits =
                new ReleaseSimulation(day(List.of(0.0, 0.0, 0.0, 0.0), 1), BenchSteps.ESTIMATED).play(DAYS, SEED);

        assertThat(waits.meanWait().standardError()).isLessThan(0.1);
        assertThat(waits.ninetiethWait().standardError()).isLessThan(0.2);
        assertThat(waits.shortRuns().standardError()).isLessThan(0.01);
        assertThat(waits.busy().standardError()).isLessThan(0.01);
    }

    /** Four ready at once and one server with service s: they wait 0, s, 2s, 3s; on average 1.5 s. */
    @ParameterizedTest
    @CsvSource({"1, 0", "2, 0.5", "3, 1", "4, 1.5"})
    void waitsWithoutChanceAsQueueingTheorySays(int cells, double meanInServices) {
        double service = 5;
        List<Double> together = java.util.Collections.nCopies(cells, 0.0);

        ReleaseWaits waits = new ReleaseSimulation(day(together, 1), withoutChance(service)).play(1, SEED);

        assertThat(waits.meanWait().value()).isCloseTo(meanInServices * service, within(EXACT));
        assertThat(waits.ninetiethWait().value()).isCloseTo((cells - 1) * service, within(EXACT));
        assertThat(waits.busy().value()).isCloseTo(cells * service / 30, within(EXACT));
        // set-up 6, then the waits and 5 of service: 30 - 4 - 6 - 5 - wait minutes are left, 15, 10, 5, 0
        assertThat(waits.shortRuns().value()).isCloseTo(Math.max(0, cells - 2) / (double) cells, within(EXACT));
    }

    @Test
    void waitsAreNoneWithoutChanceWhenStartsLieAServiceApart() {
        ReleaseWaits waits =
                new ReleaseSimulation(day(List.of(0.0, 5.0, 10.0, 15.0), 1), withoutChance(5)).play(1, SEED);

        assertThat(waits.meanWait().value()).isZero();
    }

    @Test
    void aTurnAtExactlyTheLimitIsNotShort() {
        ReleaseDay atLimit = new ReleaseDay(30, 9, List.of(0.0), 1, 15);
        ReleaseDay above = new ReleaseDay(30, 9, List.of(0.0), 1, Math.nextUp(15));

        assertThat(new ReleaseSimulation(atLimit, withoutChance(5))
                        .play(1, SEED)
                        .shortRuns()
                        .value())
                .isZero();
        assertThat(new ReleaseSimulation(above, withoutChance(5))
                        .play(1, SEED)
                        .shortRuns()
                        .value())
                .isEqualTo(1);
    }

    @Test
    void theSameSeedGivesTheSameDays() {
        ReleaseSimulation simulation = new ReleaseSimulation(day(List.of(0.0, 7.0), 1), BenchSteps.ESTIMATED);

        assertThat(simulation.play(50, 1)).isEqualTo(simulation.play(50, 1));
        assertThat(simulation.play(50, 1)).isNotEqualTo(simulation.play(50, 2));
    }

    @Test
    void everybodyStayingAwayIsNoWaitAtAll() {
        BenchSteps nobody = new BenchSteps(
                StepTime.Triangular.always(6), StepTime.Triangular.always(3), StepTime.Triangular.always(1), 1, 4);

        ReleaseWaits waits = new ReleaseSimulation(day(List.of(0.0), 1), nobody).play(3, SEED);

        assertThat(waits.meanWait().value()).isZero();
        assertThat(waits.shortRuns().value()).isZero();
        assertThat(waits.busy().value()).isZero();
    }

    /** Mean and variance of the triangular distribution: (a + b + c) / 3 and (a² + b² + c² - ab - ac - bc) / 18. */
    @Test
    void drawsTheTriangularDistribution() {
        var chance = new java.util.SplittableRandom(SEED);
        StepTime.Triangular step = new StepTime.Triangular(4, 6, 11);
        int draws = 200_000;
        double[] drawn = new double[draws];
        for (int one = 0; one < draws; one++) {
            drawn[one] = step.draw(chance);
        }
        double mean = java.util.Arrays.stream(drawn).average().orElseThrow();
        double variance = java.util.Arrays.stream(drawn)
                .map(one -> (one - mean) * (one - mean))
                .average()
                .orElseThrow();

        assertThat(mean).isCloseTo(7, within(4 * Math.sqrt(variance / draws)));
        assertThat(variance).isCloseTo(39.0 / 18, within(0.03));
        assertThat(step.mean()).isCloseTo(7, within(EXACT));
        assertThat(java.util.Arrays.stream(drawn)).allMatch(one -> one >= 4 && one <= 11);
    }

    @Test
    void drawsOnlyTimesThatTheLogHas() {
        StepTime.Measured log = new StepTime.Measured(List.of(3.0, 5.0));
        var chance = new java.util.SplittableRandom(SEED);

        assertThat(java.util.stream.DoubleStream.generate(() -> log.draw(chance))
                        .limit(200)
                        .boxed()
                        .distinct())
                .containsExactlyInAnyOrder(3.0, 5.0);
        assertThat(log.mean()).isEqualTo(4);
    }

    @Test
    void refusesTimesThatCannotBe() {
        assertThatThrownBy(() -> new StepTime.Triangular(2, 1, 3)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new StepTime.Triangular(Double.NaN, 1, 3))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new StepTime.Triangular(0, 1, Double.POSITIVE_INFINITY))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new StepTime.Measured(List.of())).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new StepTime.Measured(List.of(Double.NaN)))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new ReleaseDay(Double.NaN, 9, List.of(0.0), 1, 8))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> withNoShow(Double.NaN)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> withNoShow(Math.nextUp(1.0))).isInstanceOf(IllegalArgumentException.class);
        assertThat(withNoShow(1).noShow()).isEqualTo(1);
    }

    private static BenchSteps withNoShow(double share) {
        StepTime step = StepTime.Triangular.always(1);
        return new BenchSteps(step, step, step, share, 4);
    }
}
