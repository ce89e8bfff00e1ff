package org.standclear.booking;

import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import org.springframework.stereotype.Component;
import org.standclear.booking.NewPlaces.Disturbed;
import org.standclear.cell.Cell;
import org.standclear.cell.CellState;
import org.standclear.cell.Cells;
import org.standclear.people.Authorisation;
import org.standclear.people.Authorisations;
import org.standclear.people.Duty;
import org.standclear.people.People;
import org.standclear.people.Person;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.PersonId;

/** Where one booking could go by itself when its cell is down, by the rules that the desk asks when it is moved. */
@Component
class CouldGo {

    private static final int LOOKED_AT = 90;

    private final FreeSlots freeSlots;
    private final Claims claims;
    private final CellFit fit;
    private final Parties.Lookup parties;
    private final Authorisations authorisations;
    private final Cells cells;
    private final People people;

    CouldGo(
            FreeSlots freeSlots,
            Claims claims,
            CellFit fit,
            Parties.Lookup parties,
            Authorisations authorisations,
            Cells cells,
            People people) {
        this.freeSlots = freeSlots;
        this.claims = claims;
        this.fit = fit;
        this.parties = parties;
        this.authorisations = authorisations;
        this.cells = cells;
        this.people = people;
    }

    /** The next slots that the booking could take, soonest first. */
    Disturbed from(Booking booking, boolean due, Instant now) {
        return from(booking, due, now, LOOKED_AT);
    }

    /** All of them as far as can be booked: one that was planned may have come later in line since. */
    Disturbed fromAll(Booking booking, boolean due, Instant now) {
        return from(booking, due, now, Integer.MAX_VALUE);
    }

    private Disturbed from(Booking booking, boolean due, Instant now, int atMost) {
        List<Slot> could = could(booking, now, atMost);
        PersonId attendant = booking.attendant();
        return new Disturbed(booking, due, could, attendant == null ? could : attended(booking, attendant, could));
    }

    /** On other cells that fit, not before the booking would have begun; what it holds itself is not in its way. */
    private List<Slot> could(Booking booking, Instant now, int atMost) {
        Predicate<CellId> fits = fit.fitting(booking.operator(), booking.assignment());
        Parties of = parties.of(booking.operator());
        return freeSlots.instead(booking, atMost).stream()
                .filter(slot -> !slot.cell().equals(booking.cell()) && fits.test(slot.cell()))
                .filter(slot ->
                        !slot.start().isBefore(booking.start()) && !slot.start().isBefore(now))
                .filter(slot -> PeopleRule.mayOperate(of, booking.operator(), slot))
                .toList();
    }

    private List<Slot> attended(Booking booking, PersonId attendant, List<Slot> could) {
        if (could.isEmpty()) {
            return could;
        }
        Instant from =
                could.stream().map(Slot::start).min(Comparator.naturalOrder()).orElseThrow();
        Instant until =
                could.stream().map(Slot::end).max(Comparator.naturalOrder()).orElseThrow();
        List<Claims.Claim> taken = claims.on(List.of(attendant.value()), from, until).stream()
                .filter(claim -> !booking.id().value().equals(claim.booking()))
                .toList();
        List<Authorisation> may = authorisations.of(attendant).stream()
                .filter(one -> one.duty() == Duty.ATTENDANT)
                .toList();
        Set<CellId> staffOnly = staffOnly(attendant);
        return could.stream()
                .filter(slot -> !staffOnly.contains(slot.cell()))
                .filter(slot -> may.stream().anyMatch(one -> one.covers(slot.cell(), slot.start())))
                .filter(slot -> may.stream()
                        .anyMatch(one -> one.covers(slot.cell(), slot.end().minusSeconds(1))))
                .filter(slot -> taken.stream().noneMatch(claim -> slot.overlaps(claim.start(), claim.end())))
                .toList();
    }

    /** Restricted cells, unless the attendant is lab staff: the desk would let nobody else attend there. */
    private Set<CellId> staffOnly(PersonId attendant) {
        if (people.find(attendant).filter(Person::isLabStaff).isPresent()) {
            return Set.of();
        }
        return cells.all().stream()
                .filter(cell -> cell.state() == CellState.RESTRICTED)
                .map(Cell::id)
                .collect(Collectors.toSet());
    }
}
