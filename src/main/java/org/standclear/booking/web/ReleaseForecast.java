package org.standclear.booking.web;

import java.util.Collections;
import java.util.List;
import java.util.Locale;
import org.springframework.stereotype.Component;
import org.standclear.booking.BenchLog;
import org.standclear.booking.BookingNumbers;
import org.standclear.booking.NoShows;
import org.standclear.cell.Cell;
import org.standclear.cell.Cells;
import org.standclear.core.forecast.BenchSteps;
import org.standclear.core.forecast.ReleaseDay;
import org.standclear.core.forecast.ReleaseSimulation;
import org.standclear.core.forecast.ReleaseWaits;

/** How long people wait for a release with the lab's own cells, beside all cells starting together. */
@Component
class ReleaseForecast {

    private static final int LATEST_RUNS = 400;
    private static final int LATEST_BOOKINGS = 400;
    private static final int DAYS = 400;
    private static final int SLOTS = 9;
    private static final double SHORT_RUN = 8;
    private static final long SEED = 1;

    private final Cells cells;
    private final BookingNumbers numbers;
    private final BenchLog log;
    private final NoShows noShows;

    ReleaseForecast(Cells cells, BookingNumbers numbers, BenchLog log, NoShows noShows) {
        this.cells = cells;
        this.numbers = numbers;
        this.log = log;
        this.noShows = noShows;
    }

    /** A line of the table. */
    record Line(String starts, int technicians, String mean, String ninetieth, String shortRuns, String busy) {}

    /** The table, and where its step times come from. */
    record Waits(List<Line> lines, List<String> sources) {}

    Waits waits() {
        List<Double> offsets = cells.all().stream()
                .filter(cell -> cell.state().mayRun())
                .map(Cell::startOffsetMinutes)
                .map(Integer::doubleValue)
                .toList();
        if (offsets.isEmpty()) {
            return new Waits(List.of(), List.of("No cell runs now."));
        }
        KnownSteps known =
                KnownSteps.of(log.setUps(LATEST_RUNS), log.releaseWork(LATEST_RUNS), noShows.latest(LATEST_BOOKINGS));
        BenchSteps steps = known.steps();
        List<Double> together = Collections.nCopies(offsets.size(), 0.0);
        List<Line> lines = List.of(
                line("as they are", offsets, 1, steps),
                line("all together", together, 1, steps),
                line("as they are", offsets, 2, steps),
                line("all together", together, 2, steps));
        return new Waits(lines, known.sources());
    }

    private Line line(String starts, List<Double> offsets, int technicians, BenchSteps steps) {
        ReleaseDay day = new ReleaseDay(numbers.inForce().slotMinutes(), SLOTS, offsets, technicians, SHORT_RUN);
        ReleaseWaits waits = new ReleaseSimulation(day, steps).play(DAYS, SEED);
        return new Line(
                starts,
                technicians,
                String.format(Locale.ROOT, "%.1f min", waits.meanWait().value()),
                String.format(Locale.ROOT, "%.1f min", waits.ninetiethWait().value()),
                percent(waits.shortRuns().value()),
                percent(waits.busy().value()));
    }

    static String percent(double share) {
        return share == Double.POSITIVE_INFINITY ? "no capacity" : Math.round(share * 100) + " %";
    }
}
