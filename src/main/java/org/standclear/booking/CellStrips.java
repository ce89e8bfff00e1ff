package org.standclear.booking;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.Function;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.standclear.booking.SlotCalendar.CellDay;
import org.standclear.booking.SlotCalendar.DayPlan;
import org.standclear.booking.SlotCalendar.Held;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.strip.Strip;
import org.standclear.platform.strip.StripBlock;
import org.standclear.platform.strip.StripScale;
import org.standclear.platform.time.LabTime;

/**
 * Draws days of cells for one reader: staff see names, students only their own bookings and elsewhere "taken".
 *
 * @param reader whose page it is
 * @param staff whether the reader is lab staff
 * @param names printed names
 * @param stateWords what a booking's state is called; "released until 10:42" needs more than the booking
 * @param usual how long the lab's slots are
 * @param books whether free slots lead to the form that books them
 */
public record CellStrips(
        LabTime labTime,
        PersonId reader,
        boolean staff,
        Function<PersonId, String> names,
        Function<Booking, String> stateWords,
        Duration usual,
        boolean books) {

    /** A block with the instant it begins, for the order on the strip. */
    private record Placed(Instant start, StripBlock block) {}

    /** The key of a state in the look's list of states. */
    public static String key(BookingState state) {
        return state == BookingState.MOVED_BY_STAFF
                ? "moved"
                : state.name().toLowerCase(java.util.Locale.ROOT).replace('_', '-');
    }

    /** The cell's day; null when the lab is closed and nothing stands on it. */
    public @Nullable Strip strip(DayPlan plan, CellDay day, Instant now) {
        StripScale scale = scale(plan);
        if (scale == null) {
            return null;
        }
        List<Placed> placed = new ArrayList<>();
        day.bookings().forEach(booking -> booked(scale, booking).forEach(placed::add));
        day.closures().forEach(closure -> placed.add(kept(scale, closure)));
        day.held().stream()
                .filter(one -> one.slot().end().isAfter(now))
                .forEach(one -> placed.addAll(held(scale, one)));
        placed.addAll(day.cell().state().mayRun() ? free(scale, day, now) : stopped(scale, day, now));
        return new Strip(
                day.cell().id().toString(),
                day.cell().name() + ", " + labTime.day(plan.date()),
                scale.hours(),
                placed.stream()
                        .sorted(Comparator.comparing(Placed::start))
                        .map(Placed::block)
                        .toList(),
                scale.placeWithin(now));
    }

    /** From opening, or the first thing on any cell, to closing, or the last. */
    private @Nullable StripScale scale(DayPlan plan) {
        LocalDate date = plan.date();
        Stream<Instant> open = plan.hours().periods().stream()
                .flatMap(period -> Stream.of(period.opens(), period.closes()))
                .map(time -> date.atTime(time).atZone(labTime.zone()).toInstant());
        Stream<Instant> booked = plan.cells().stream()
                .flatMap(day -> day.bookings().stream())
                .flatMap(booking -> Stream.of(booking.start(), booking.end()));
        List<Instant> ends = Stream.concat(open, booked).sorted().toList();
        return ends.size() < 2 ? null : new StripScale(ends.get(0), ends.get(ends.size() - 1), labTime.zone());
    }

    /**
     * A booking as others see it: in stretches of the length of the lab's slots, since a longer one would say that somebody
     * needs longer.
     */
    public List<Slot> asOthersSee(Booking booking) {
        return asOthersSee(new Slot(booking.cell(), booking.start(), booking.end()));
    }

    /** The same for a slot that is held for somebody. */
    public List<Slot> asOthersSee(Slot slot) {
        List<Slot> stretches = new ArrayList<>();
        Instant start = slot.start();
        while (start.isBefore(slot.end())) {
            stretches.add(new Slot(slot.cell(), start, start.plus(usual)));
            start = start.plus(usual);
        }
        return stretches;
    }

    private Stream<Placed> booked(StripScale scale, Booking booking) {
        boolean shown = booking.involves(reader) || staff;
        if (shown || !booking.end().isAfter(booking.start().plus(usual))) {
            return Stream.of(shown(scale, booking, shown));
        }
        return asOthersSee(booking).stream()
                .map(one -> placed(scale, one.start(), one.end(), "taken", "", "taken", "taken", null, false));
    }

    private Placed shown(StripScale scale, Booking booking, boolean shown) {
        boolean mine = booking.involves(reader);
        String attendant = booking.attendant() == null ? "needs an attendant" : names.apply(booking.attendant());
        return placed(
                scale,
                booking.start(),
                booking.end(),
                shown ? names.apply(booking.operator()) : "taken",
                shown ? attendant : "",
                shown ? key(booking.state()) : "taken",
                shown ? stateWords.apply(booking) : "taken",
                shown ? "/bookings/" + booking.id() : null,
                mine);
    }

    private Placed kept(StripScale scale, CellClosure closure) {
        return placed(
                scale,
                closure.start(),
                closure.end(),
                closure.words(),
                closure.kind().words(),
                "closed",
                "kept for a " + closure.kind().words(),
                staff ? "/closures/" + closure.id() : null,
                false);
    }

    private List<Placed> held(StripScale scale, Held one) {
        String until = "until " + labTime.time(one.until());
        List<Slot> shown = one.ownOffer() == null ? asOthersSee(one.slot()) : List.of(one.slot());
        return shown.stream()
                .map(slot -> placed(
                        scale,
                        slot.start(),
                        slot.end(),
                        one.ownOffer() == null ? "offered" : "offered to you",
                        until,
                        "offered",
                        "offered " + until,
                        one.ownOffer() == null ? null : "/book/offers/" + one.ownOffer(),
                        one.ownOffer() != null))
                .toList();
    }

    private List<Placed> free(StripScale scale, CellDay day, Instant now) {
        return day.free().stream()
                .map(slot -> slot.start().isBefore(now)
                        ? placed(scale, slot.start(), slot.end(), "", "", "past", "not used", null, false)
                        : placed(scale, slot.start(), slot.end(), "free", "", "free", "free", bookHref(slot), false))
                .toList();
    }

    private @Nullable String bookHref(Slot slot) {
        return books ? "/book/slot?cell=" + slot.cell() + "&start=" + slot.start() : null;
    }

    /** A cell that does not run has no free slots: those that touch become one hatched stretch each. */
    private List<Placed> stopped(StripScale scale, CellDay day, Instant now) {
        List<Placed> stretches = new ArrayList<>();
        Instant start = null;
        Instant end = null;
        for (Slot slot :
                day.free().stream().filter(one -> one.end().isAfter(now)).toList()) {
            if (start != null && end != null && !slot.start().equals(end)) {
                stretches.add(outOfService(scale, day, start, end));
                start = null;
            }
            start = start == null ? slot.start() : start;
            end = slot.end();
        }
        if (start != null && end != null) {
            stretches.add(outOfService(scale, day, start, end));
        }
        return stretches;
    }

    private Placed outOfService(StripScale scale, CellDay day, Instant start, Instant end) {
        String words = day.cell().state().words();
        return placed(scale, start, end, words, day.cell().stateReason(), "out-of-service", words, null, false);
    }

    private Placed placed(
            StripScale scale,
            Instant start,
            Instant end,
            String first,
            String second,
            String state,
            String words,
            @Nullable String href,
            boolean mine) {
        return new Placed(
                start,
                new StripBlock(
                        scale.place(start),
                        scale.width(start, end),
                        labTime.times(start, end),
                        first,
                        second,
                        state,
                        words,
                        href,
                        mine));
    }
}
