package org.standclear.booking;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import org.standclear.booking.Claims.Claim;
import org.standclear.booking.OpeningHours.DayHours;
import org.standclear.booking.SharedDays.SharedOut;
import org.standclear.cell.Cell;
import org.standclear.cell.Cells;
import org.standclear.people.Authorisation;
import org.standclear.people.Authorisations;
import org.standclear.people.Duty;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.time.LabTime;

/** Looks for slots that a person could take, day by day from an instant on. */
@Component
class FreeSlots {

    private final Cells cells;
    private final Authorisations authorisations;
    private final OpeningHours openingHours;
    private final BookingNumbers numbers;
    private final Claims claims;
    private final SharedDays sharedDays;
    private final PersonsLength lengths;
    private final CellFit fit;
    private final LabTime labTime;
    private final Clock clock;

    FreeSlots(
            Cells cells,
            Authorisations authorisations,
            OpeningHours openingHours,
            BookingNumbers numbers,
            Claims claims,
            SharedDays sharedDays,
            PersonsLength lengths,
            CellFit fit,
            LabTime labTime,
            Clock clock) {
        this.cells = cells;
        this.authorisations = authorisations;
        this.openingHours = openingHours;
        this.numbers = numbers;
        this.claims = claims;
        this.sharedDays = sharedDays;
        this.lengths = lengths;
        this.fit = fit;
        this.labTime = labTime;
        this.clock = clock;
    }

    /** What the search needs to know about the person and the lab. */
    private record Search(
            PersonId operator,
            Instant earliest,
            List<Authorisation> may,
            List<Cell> open,
            SlotGrid grid,
            Duration taking,
            Predicate<@Nullable UUID> ignored,
            List<SharedOut> notGiven) {

        boolean fits(Slot slot) {
            return !slot.start().isBefore(earliest)
                    && may.stream().anyMatch(one -> one.covers(slot.cell(), slot.start()));
        }

        List<Slot> slots(DayHours hours) {
            if (notGiven.stream().anyMatch(one -> one.has(hours.day()))) {
                return List.of();
            }
            return open.stream()
                    .flatMap(cell ->
                            grid
                                    .slots(cell.id(), hours.day(), hours.periods(), cell.startOffsetMinutes(), taking)
                                    .stream())
                    .filter(this::fits)
                    .sorted(Comparator.comparing(Slot::start))
                    .toList();
        }
    }

    /** Those on one cell, or on all when it is null. */
    List<Slot> next(PersonId operator, Instant from, int atMost, @Nullable CellId cell) {
        return cell == null
                ? next(operator, from, atMost)
                : next(operator, from, Integer.MAX_VALUE).stream()
                        .filter(slot -> slot.cell().equals(cell))
                        .limit(atMost)
                        .toList();
    }

    /** Those that could take the place of a booking: what it holds itself is not in the way. */
    List<Slot> instead(Booking booking, int atMost) {
        return next(booking.operator(), booking.start(), atMost, booking.id().value()::equals, List.of());
    }

    /** The next ones at the instant or after; from now on when that is past, or when none is left after it. */
    List<Slot> next(PersonId operator, Instant from, int atMost) {
        return next(operator, from, atMost, booking -> false, sharedDays.ahead());
    }

    private List<Slot> next(
            PersonId operator, Instant from, int atMost, Predicate<@Nullable UUID> ignored, List<SharedOut> notGiven) {
        Instant now = clock.instant();
        BookingSettings settings = numbers.inForce();
        LocalDate last = labTime.date(now).plusDays(settings.horizonDays());
        Instant earliest = from.isBefore(now) || labTime.date(from).isAfter(last) ? now : from;
        List<Authorisation> may = authorisations.of(operator).stream()
                .filter(authorisation -> authorisation.duty() == Duty.OPERATOR)
                .toList();
        Predicate<CellId> fits = fit.fitting(operator, null);
        List<Cell> open = cells.all().stream()
                .filter(cell -> cell.state().mayRun() && fits.test(cell.id()))
                .toList();
        SlotGrid grid = new SlotGrid(labTime.zone(), settings.slotLength());
        Duration taking = lengths.longestOf(operator, settings);
        List<Slot> found =
                found(new Search(operator, earliest, may, open, grid, taking, ignored, notGiven), last, atMost);
        return found.isEmpty() && earliest.isAfter(now)
                ? found(new Search(operator, now, may, open, grid, taking, ignored, notGiven), last, atMost)
                : found;
    }

    private List<Slot> found(Search search, LocalDate last, int atMost) {
        List<Slot> found = new ArrayList<>();
        for (DayHours hours : openingHours.from(labTime.date(search.earliest()), last)) {
            found.addAll(free(search, search.slots(hours)));
            if (found.size() >= atMost) {
                break;
            }
        }
        return found.stream().limit(atMost).toList();
    }

    /** Those of one day for which neither the cell nor the operator is claimed. */
    private List<Slot> free(Search search, List<Slot> slots) {
        PersonId operator = search.operator();
        if (slots.isEmpty()) {
            return List.of();
        }
        Set<UUID> subjects = slots.stream().map(slot -> slot.cell().value()).collect(Collectors.toSet());
        subjects.add(operator.value());
        Instant until =
                slots.stream().map(Slot::end).max(Comparator.naturalOrder()).orElseThrow();
        List<Claim> taken = claims.on(subjects, slots.get(0).start(), until).stream()
                .filter(claim -> !search.ignored().test(claim.booking()))
                .toList();
        return slots.stream()
                .filter(slot -> taken.stream().noneMatch(claim -> takes(claim, slot, operator)))
                .toList();
    }

    private static boolean takes(Claim claim, Slot slot, PersonId operator) {
        return (claim.subject().equals(slot.cell().value()) || claim.subject().equals(operator.value()))
                && slot.overlaps(claim.start(), claim.end());
    }
}
