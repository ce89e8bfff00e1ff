package org.standclear.booking.allocation;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.stereotype.Component;
import org.standclear.booking.Booking;
import org.standclear.booking.BookingNumbers;
import org.standclear.booking.NewPlaces;
import org.standclear.booking.NewPlaces.Disturbed;
import org.standclear.booking.Slot;
import org.standclear.core.allocation.Allocator;
import org.standclear.core.allocation.Attendant;
import org.standclear.core.allocation.Bench;
import org.standclear.core.allocation.FreeSlot;
import org.standclear.core.allocation.Placed;
import org.standclear.core.allocation.PlanRules;
import org.standclear.core.allocation.Problem;
import org.standclear.core.allocation.Solution;
import org.standclear.core.allocation.Span;
import org.standclear.core.allocation.Times;
import org.standclear.core.allocation.Turn;
import org.standclear.core.allocation.Wish;
import org.standclear.core.allocation.Work;
import org.standclear.platform.ids.BookingId;
import org.standclear.platform.time.LabTime;

/**
 * Places disturbed bookings with the solver that shares windows out. Each is a turn that stands on the cell that went down;
 * everything else is fixed, since only what is free is offered.
 */
@Component
class SolvedPlaces implements NewPlaces {

    private static final String TOOL = "any";
    private static final Allocator.Effort EFFORT = new Allocator.Effort(1, 4, Duration.ofSeconds(6));

    private final Allocator allocator;
    private final Supplier<Duration> slotLength;
    private final Supplier<ZoneId> zone;

    @Autowired
    SolvedPlaces(Allocator allocator, BookingNumbers numbers, LabTime labTime) {
        this(allocator, () -> numbers.inForce().slotLength(), labTime::zone);
    }

    SolvedPlaces(Allocator allocator, Supplier<Duration> slotLength, Supplier<ZoneId> zone) {
        this.allocator = allocator;
        this.slotLength = slotLength;
        this.zone = zone;
    }

    @Override
    public Map<BookingId, Slot> find(List<Disturbed> disturbed) {
        if (disturbed.stream().allMatch(one -> one.could().isEmpty())) {
            return Map.of();
        }
        Set<BookingId> alone = new HashSet<>();
        disturbed.stream()
                .filter(one -> one.withAttendant().isEmpty())
                .forEach(one -> alone.add(one.booking().id()));
        Map<BookingId, Slot> places = solved(disturbed, alone);
        // somebody else can be named for the e-stop, a turn cannot be given again
        List<BookingId> without = disturbed.stream()
                .map(one -> one.booking().id())
                .filter(id -> !places.containsKey(id) && !alone.contains(id))
                .toList();
        if (without.isEmpty()) {
            return places;
        }
        alone.addAll(without);
        Map<BookingId, Slot> again = solved(disturbed, alone);
        return again.size() > places.size() ? again : places;
    }

    private Map<BookingId, Slot> solved(List<Disturbed> disturbed, Set<BookingId> alone) {
        Problem problem = problem(disturbed, alone);
        Solution solution = allocator.solve(problem, EFFORT, Allocator.Watcher.none());
        List<String> broken = new PlanRules(problem).broken(solution.plan());
        if (!broken.isEmpty()) {
            throw new IllegalStateException("the solver broke a rule: " + broken.get(0));
        }
        Map<BookingId, Slot> places = new LinkedHashMap<>();
        for (Disturbed one : disturbed) {
            String id = one.booking().id().toString();
            solution.plan().placed().stream()
                    .filter(placed -> placed.turn().equals(id))
                    .forEach(placed -> places.put(one.booking().id(), slot(one, placed)));
        }
        return places;
    }

    /** The slot of its own; a place that only others could take is an error of the model. */
    private static Slot slot(Disturbed one, Placed placed) {
        return one.could().stream()
                .filter(slot -> slot.cell().toString().equals(placed.cell())
                        && slot.start().equals(placed.span().from()))
                .findFirst()
                .orElseThrow(() -> new IllegalStateException("no such slot for " + placed.turn()));
    }

    private Problem problem(List<Disturbed> disturbed, Set<BookingId> alone) {
        Map<String, Set<String>> mayAt = new TreeMap<>();
        Set<FreeSlot> slots = new LinkedHashSet<>();
        Map<String, Set<String>> attends = new TreeMap<>();
        List<Turn> turns = new ArrayList<>();
        for (Disturbed one : disturbed) {
            boolean needsOne = isAlone(one, alone);
            List<Slot> could = needsOne ? one.could() : one.withAttendant();
            String attendant = needsOne
                    ? "somebody for " + one.booking().id()
                    : String.valueOf(one.booking().attendant());
            for (Slot slot : could) {
                String cell = slot.cell().toString();
                mayAt.computeIfAbsent(cell, key -> new HashSet<>())
                        .add(one.booking().id().toString());
                attends.computeIfAbsent(attendant, key -> new HashSet<>()).add(cell);
                slots.addAll(pieces(slot));
            }
            if (!could.isEmpty()) {
                turns.add(turn(one, could, needsOne ? null : attendant));
            }
        }
        List<Bench> benches = new ArrayList<>();
        mayAt.forEach((cell, bookings) -> benches.add(new Bench(cell, Set.of(TOOL), TOOL, bookings)));
        Span always = new Span(Instant.EPOCH, Instant.parse("9999-01-01T00:00:00Z"));
        List<Attendant> attendants = new ArrayList<>();
        attends.forEach((person, cells) -> attendants.add(new Attendant(person, cells, List.of(always), true)));
        return new Problem(benches, List.copyOf(slots), attendants, turns, Map.of(), Map.of(), List.of());
    }

    private static boolean isAlone(Disturbed one, Set<BookingId> alone) {
        return one.booking().attendant() == null || alone.contains(one.booking().id());
    }

    /** A longer slot reaches into the next of the grid and takes it too. */
    private List<FreeSlot> pieces(Slot slot) {
        Duration length = slotLength.get();
        List<FreeSlot> pieces = new ArrayList<>();
        for (Instant start = slot.start(); start.isBefore(slot.end()); start = start.plus(length)) {
            pieces.add(new FreeSlot(slot.cell().toString(), new Span(start, start.plus(length))));
        }
        return pieces;
    }

    private Turn turn(Disturbed one, List<Slot> could, @Nullable String partner) {
        Booking booking = one.booking();
        Span old = new Span(booking.start(), booking.end());
        long minutes =
                Duration.between(could.get(0).start(), could.get(0).end()).toMinutes();
        Span window = new Span(Instant.EPOCH, Instant.parse("9999-01-01T00:00:00Z"));
        List<Span> canCome = could.stream()
                .map(slot -> new Span(slot.start(), slot.end()))
                .distinct()
                .toList();
        return new Turn(
                booking.id().toString(),
                booking.operator().toString(),
                partner,
                new Work(TOOL, (int) minutes, Set.of(booking.id().toString()), false),
                new Times(window, canCome, wishes(booking, could)),
                one.due(),
                new Placed(booking.id().toString(), booking.cell().toString(), old, "nobody"));
    }

    /** The old time, give or take a slot; then day after day. */
    private List<Wish> wishes(Booking booking, List<Slot> could) {
        Duration slot = slotLength.get();
        List<Wish> wishes = new ArrayList<>();
        wishes.add(new Wish(
                null, new Span(booking.start().minus(slot), booking.end().plus(slot))));
        LocalDate first = booking.start().atZone(zone.get()).toLocalDate();
        LocalDate last = could.stream()
                .map(one -> one.start().atZone(zone.get()).toLocalDate())
                .max(Comparator.naturalOrder())
                .orElse(first);
        for (LocalDate day = first; !day.isAfter(last); day = day.plusDays(1)) {
            wishes.add(new Wish(
                    null,
                    new Span(
                            day.atStartOfDay(zone.get()).toInstant(),
                            day.plusDays(1).atStartOfDay(zone.get()).toInstant())));
        }
        return wishes;
    }
}
