package org.standclear.demo;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.atomic.AtomicReference;
import org.standclear.booking.Slot;
import org.standclear.demo.VisitScript.Visit;
import org.standclear.demo.WeekSeed.Becomes;
import org.standclear.demo.WeekSeed.NowSeed;
import org.standclear.platform.ids.BookingId;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.PersonId;

/** What stands ready to be played when the demo starts, whatever the day and hour; the week's script gives way to it. */
final class NowScript {

    private final Instant start;
    private final Instant bookedAt;
    private final Timeline timeline;
    private final Roster roster;
    private final DemoBookings bookings;
    private final DemoBench bench;
    private final VisitScript visits;
    private final List<Stand> stands = new ArrayList<>();

    NowScript(
            WeekTimes times,
            Timeline timeline,
            Roster roster,
            DemoBookings bookings,
            DemoBench bench,
            VisitScript visits) {
        this.start = times.start();
        // before a cell of theirs may be tagged out
        this.bookedAt = times.at(times.monday().minusDays(1), LocalTime.of(17, 30));
        this.timeline = timeline;
        this.roster = roster;
        this.bookings = bookings;
        this.bench = bench;
        this.visits = visits;
    }

    /** A slot and its people. */
    private record Stand(Slot slot, PersonId operator, PersonId attendant) {

        boolean involves(PersonId person) {
            return operator.equals(person) || attendant.equals(person);
        }
    }

    /** Gives each of the people one of the slots, as far as there are any. */
    void write(List<NowSeed> people, List<Slot> slots) {
        for (int i = 0; i < Math.min(people.size(), slots.size()); i++) {
            NowSeed seed = people.get(i);
            Stand stand = new Stand(slots.get(i), roster.person(seed.operator()), roster.person(seed.attendant()));
            stands.add(stand);
            timeline.add(bookedAt, () -> book(stand, seed.becomes()));
        }
    }

    boolean isInTheWayOf(CellId cell, Instant from, Instant until, PersonId operator, PersonId attendant) {
        return stands.stream()
                .filter(stand -> stand.slot().overlaps(from, until))
                .anyMatch(stand ->
                        stand.slot().cell().equals(cell) || stand.involves(operator) || stand.involves(attendant));
    }

    /** Whether staff would keep a cell that is needed here. */
    boolean isInTheWayOf(CellId cell, Instant from, Instant until) {
        return stands.stream()
                .anyMatch(stand ->
                        stand.slot().cell().equals(cell) && stand.slot().overlaps(from, until));
    }

    private void book(Stand stand, Becomes becomes) {
        Slot slot = stand.slot();
        BookingId id = bookings.book(
                slot.cell(), slot.start(), stand.operator(), stand.attendant(), roster.studies(stand.operator()));
        Visit visit = new Visit(id, slot.cell(), slot.start(), stand.operator(), stand.attendant());
        // on the way to the lab, so that a tool change of the day before is known already
        timeline.add(
                notAfterStart(visit.minute(-20)),
                () -> bookings.attach(
                        id, stand.operator(), roster.seed(stand.operator()), roster.programFor(slot.cell())));
        timeline.add(notAfterStart(visit.minute(-4)), () -> bookings.checkIn(id, stand.operator()));
        switch (becomes) {
            case CHECKED_IN -> {}
            case READY -> timeline.add(signedLate(visit), () -> bench.session(id, roster));
            case RUNNING -> {
                timeline.add(notAfterStart(visit.minute(-2)), () -> bench.session(id, roster));
                visits.run(visit, 3, new AtomicReference<>());
            }
        }
    }

    private Instant notAfterStart(Instant at) {
        return at.isAfter(start) ? start : at;
    }

    /** As late as can be: an attendant's turn is short, and the visitor has just come. */
    private Instant signedLate(Visit visit) {
        Instant late = start.minus(Duration.ofMinutes(1));
        return late.isBefore(visit.minute(-2)) ? notAfterStart(visit.minute(-2)) : late;
    }
}
