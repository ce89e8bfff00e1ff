package org.standclear.demo;

import java.time.DayOfWeek;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.List;
import org.standclear.demo.VisitScript.Visit;
import org.standclear.demo.WeekSeed.BookingSeed;
import org.standclear.demo.WeekSeed.Goes;
import org.standclear.demo.WeekSeed.OutOfServiceSeed;
import org.standclear.platform.ids.BookingId;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.PersonId;

/** Puts the bookings of the script on the timeline, in the weeks around the start of the demo. */
final class WeekScript {

    private static final Duration SLOT = Duration.ofMinutes(30);

    private final WeekSeed seed;
    private final WeekTimes times;
    private final Timeline timeline;
    private final Roster roster;
    private final DemoBookings bookings;
    private final VisitScript visits;
    private final NowScript now;
    private final DemoTurns turns;
    private final List<Runnable> stillToBook = new ArrayList<>();

    WeekScript(
            WeekSeed seed,
            WeekTimes times,
            Timeline timeline,
            Roster roster,
            DemoBookings bookings,
            VisitScript visits,
            NowScript now,
            DemoTurns turns) {
        this.seed = seed;
        this.times = times;
        this.timeline = timeline;
        this.roster = roster;
        this.bookings = bookings;
        this.visits = visits;
        this.now = now;
        this.turns = turns;
    }

    /** One booking of the script in one week. */
    private record Occurrence(BookingSeed seed, Instant start, Instant bookedAt, int number) {}

    void write() {
        // a Monday would have no past at all, so the end of the week before is played too
        DayOfWeek today = times.today().getDayOfWeek();
        if (today.getValue() <= DayOfWeek.TUESDAY.getValue()) {
            write(-1);
        }
        write(0);
        if (today.getValue() >= DayOfWeek.THURSDAY.getValue()) {
            write(1);
        }
    }

    private void write(int week) {
        int number = 0;
        for (BookingSeed booking : seed.bookings()) {
            number++;
            if (belongsTo(week, booking)) {
                LocalDate date = times.date(booking.day()).plusWeeks(week);
                Instant start = times.at(date, booking.at());
                Occurrence one = new Occurrence(booking, start, bookedAt(booking, date, start, number), number);
                if (!now.isInTheWayOf(cell(one), start, start.plus(SLOT), operator(one), attendant(one))) {
                    write(one);
                }
            }
        }
    }

    private static boolean belongsTo(int week, BookingSeed booking) {
        return switch (week) {
            case 0 -> true;
            case -1 -> booking.day() == WeekTimes.Day.THU || booking.day() == WeekTimes.Day.FRI;
            default ->
                booking.goes() == Goes.RAN
                        && (booking.day() == WeekTimes.Day.MON || booking.day() == WeekTimes.Day.TUE);
        };
    }

    /** The afternoon before; on a cell that will be tagged out, before that. */
    private Instant bookedAt(BookingSeed booking, LocalDate date, Instant start, int number) {
        if (booking.goes() == Goes.REFILL) {
            return start.minus(Duration.ofMinutes(60));
        }
        LocalTime afternoon = LocalTime.NOON.plusMinutes(number * 7L % 300);
        boolean tagged = seed.outOfService().stream().anyMatch(tag -> tag.cell().equals(booking.cell()));
        LocalDate sunday = times.monday().minusDays(1);
        return times.at(tagged && date.isAfter(sunday) ? sunday : date.minusDays(1), afternoon);
    }

    private void write(Occurrence one) {
        if (!one.bookedAt().isAfter(times.start())) {
            if (one.seed().goes() == Goes.REFILL) {
                timeline.add(
                        one.start().minus(Duration.ofHours(5)),
                        () -> turns.join(cell(one), one.start(), operator(one), roster.studies(operator(one))));
            }
            timeline.add(one.bookedAt(), () -> follow(one, book(one)));
        } else if (one.seed().goes() != Goes.REFILL && one.seed().goes() != Goes.MOVED) {
            stillToBook.add(() -> {
                BookingId id = book(one);
                if (isPrepared(one)) {
                    attach(one, id);
                }
            });
        }
    }

    /** Books what people have booked by now, but the script would only book later. */
    void bookAhead() {
        stillToBook.forEach(Runnable::run);
    }

    private BookingId book(Occurrence one) {
        if (one.seed().goes() == Goes.REFILL) {
            return bookings.withAttendant(turns.take(operator(one)), operator(one), attendant(one));
        }
        return bookings.book(cell(one), one.start(), operator(one), attendant(one), roster.studies(operator(one)));
    }

    private void follow(Occurrence one, BookingId id) {
        switch (one.seed().goes()) {
            case CANCELLED ->
                timeline.add(one.bookedAt().plus(Duration.ofHours(2)), () -> bookings.cancel(id, operator(one)));
            case LATE_CANCEL ->
                timeline.add(one.start().minus(Duration.ofMinutes(90)), () -> bookings.cancel(id, operator(one)));
            case MISSED -> timeline.add(one.start().plus(Duration.ofMinutes(7)), bookings::releaseMissed);
            case MOVED -> move(one, id);
            default -> {
                if (!one.start().isAfter(times.start()) || isPrepared(one)) {
                    timeline.add(one.bookedAt().plus(Duration.ofMinutes(3)), () -> attach(one, id));
                }
                visits.play(
                        new Visit(id, cell(one), one.start(), operator(one), attendant(one)),
                        one.seed().goes());
            }
        }
    }

    private void move(Occurrence one, BookingId id) {
        for (OutOfServiceSeed tag : seed.outOfService()) {
            if (tag.cell().equals(one.seed().cell())) {
                Instant at = times.at(tag.day(), tag.at()).plus(Duration.ofMinutes(10));
                timeline.add(at, () -> bookings.moveByStaff(id, roster.person(tag.by()), tag.reason()));
            }
        }
    }

    /** Some name their program early, some late. */
    private static boolean isPrepared(Occurrence one) {
        return one.number() % 2 == 0;
    }

    private void attach(Occurrence one, BookingId id) {
        bookings.attach(
                id, operator(one), roster.seed(operator(one)), one.seed().program());
    }

    private CellId cell(Occurrence one) {
        return roster.cell(one.seed().cell());
    }

    private PersonId operator(Occurrence one) {
        return roster.person(one.seed().operator());
    }

    private PersonId attendant(Occurrence one) {
        return roster.person(one.seed().attendant());
    }
}
