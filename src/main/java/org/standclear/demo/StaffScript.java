package org.standclear.demo;

import java.time.DayOfWeek;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.List;
import org.standclear.demo.WeekSeed.BlockSeed;
import org.standclear.demo.WeekSeed.DayTestSeed;
import org.standclear.demo.WeekSeed.OutOfServiceSeed;
import org.standclear.platform.ids.CellId;

/** What staff do during the week: day tests, tags, blocks. */
final class StaffScript {

    private static final List<String> STATIONS = List.of("front edge", "door pillar", "operator's side");

    private final WeekSeed seed;
    private final WeekTimes times;
    private final Timeline timeline;
    private final Roster roster;
    private final DemoCells cells;
    private final DemoBookings bookings;
    private final NowScript now;

    StaffScript(
            WeekSeed seed,
            WeekTimes times,
            Timeline timeline,
            Roster roster,
            DemoCells cells,
            DemoBookings bookings,
            NowScript now) {
        this.seed = seed;
        this.times = times;
        this.timeline = timeline;
        this.roster = roster;
        this.cells = cells;
        this.bookings = bookings;
        this.now = now;
    }

    void write() {
        testEveryDay();
        seed.outOfService().forEach(this::tagOut);
        seed.blocks().forEach(this::block);
    }

    private void testEveryDay() {
        DayTestSeed test = seed.dayTests();
        LocalDate first = times.monday().minusDays(4);
        for (LocalDate date = first; !date.isAfter(times.today()); date = date.plusDays(1)) {
            if (date.getDayOfWeek().getValue() <= DayOfWeek.FRIDAY.getValue()) {
                test(times.at(date, test.at()), date);
            }
        }
        if (times.today().getDayOfWeek().getValue() > DayOfWeek.FRIDAY.getValue()
                || times.start().isBefore(times.at(times.today(), test.at()))) {
            test(beforeTheFirstVisitor(), times.today());
        }
    }

    private void test(Instant at, LocalDate date) {
        String station = STATIONS.get((int) (date.toEpochDay() % STATIONS.size()));
        timeline.add(
                at, () -> cells.testAll(station, roster.person(seed.dayTests().by())));
    }

    /** On the day itself, even when the demo starts just after midnight. */
    private Instant beforeTheFirstVisitor() {
        Instant wanted = times.start().minus(Duration.ofMinutes(35));
        Instant midnight = times.at(times.today(), LocalTime.MIN);
        return wanted.isBefore(midnight) ? midnight : wanted;
    }

    private void tagOut(OutOfServiceSeed tag) {
        CellId cell = roster.cell(tag.cell());
        timeline.add(times.at(tag.day(), tag.at()), () -> cells.tagOut(cell, roster.person(tag.by()), tag.reason()));
        Instant back = times.at(tag.backDay(), tag.backAt());
        timeline.add(
                back.minus(Duration.ofMinutes(10)),
                () -> cells.test(cell, STATIONS.get(0), roster.person(tag.backBy())));
        timeline.add(
                back, () -> cells.putBack(cell, roster.person(tag.backBy()), roster.person(tag.by()), tag.mended()));
    }

    /** Kept before anybody books; not where something is to be played at the start. */
    private void block(BlockSeed block) {
        CellId cell = roster.cell(block.cell());
        Instant from = times.at(block.day(), block.from());
        Instant until = times.at(block.day(), block.until());
        if (!now.isInTheWayOf(cell, from, until)) {
            bookings.close(cell, from, until, block.asKind(), block.words(), roster.person(block.by()));
        }
    }
}
