package org.standclear.demo;

import java.time.DayOfWeek;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.stream.Stream;
import org.standclear.booking.Slot;
import org.standclear.demo.WeekSeed.PlannedSeed;
import org.standclear.demo.WeekSeed.ToolChangeSeed;
import org.standclear.platform.ids.BookingId;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.PersonId;
import org.standclear.signoff.Rechecks;

/** A tool change on the working day before the demo starts, and the re-checks that follow it by themselves. */
final class ToolChangeScript {

    private static final int AT_ONCE = 20;

    private final ToolChangeSeed seed;
    private final WeekTimes times;
    private final Timeline timeline;
    private final Roster roster;
    private final DemoCells cells;
    private final DemoBookings bookings;
    private final Rechecks rechecks;

    ToolChangeScript(
            ToolChangeSeed seed,
            WeekTimes times,
            Timeline timeline,
            Roster roster,
            DemoCells cells,
            DemoBookings bookings,
            Rechecks rechecks) {
        this.seed = seed;
        this.times = times;
        this.timeline = timeline;
        this.roster = roster;
        this.cells = cells;
        this.bookings = bookings;
        this.rechecks = rechecks;
    }

    /** Before anybody comes: what is played later that day meets the new version already. */
    void write() {
        Instant at = times.at(workingDayBefore(times.today()), seed.at());
        timeline.add(at.minus(Duration.ofHours(1)), this::book);
        timeline.add(at, () -> cells.change(seed, roster));
        timeline.add(at.plus(Duration.ofMinutes(1)), this::checkAnew);
    }

    private static LocalDate workingDayBefore(LocalDate today) {
        LocalDate day = today.minusDays(1);
        while (day.getDayOfWeek().getValue() > DayOfWeek.FRIDAY.getValue()) {
            day = day.minusDays(1);
        }
        return day;
    }

    /** In the middle of next week, where the script of the week books nothing; its Thursday is shared out by a plan. */
    private void book() {
        CellId cell = roster.cell(seed.cell());
        LocalDate wednesday = times.monday().plusDays(9);
        int half = (seed.bookings().size() + 1) / 2;
        List<Slot> slots = Stream.of(wednesday, wednesday.plusDays(2))
                .flatMap(day -> bookings.freeSlots(cell, day).skip(2).limit(half))
                .toList();
        for (int i = 0; i < seed.bookings().size(); i++) {
            book(slots.get(i), seed.bookings().get(i));
        }
    }

    private void book(Slot slot, PlannedSeed planned) {
        PersonId operator = roster.person(planned.operator());
        BookingId id = bookings.book(
                slot.cell(), slot.start(), operator, roster.person(planned.attendant()), roster.studies(operator));
        bookings.attach(id, operator, roster.seed(operator), planned.program());
    }

    private void checkAnew() {
        while (rechecks.runPending(AT_ONCE) > 0) {
            // the same that the running application does every few seconds
        }
    }
}
