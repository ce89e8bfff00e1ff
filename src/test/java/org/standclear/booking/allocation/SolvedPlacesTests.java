package org.standclear.booking.allocation;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.standclear.booking.Booking;
import org.standclear.booking.BookingState;
import org.standclear.booking.NewPlaces.Disturbed;
import org.standclear.booking.Slot;
import org.standclear.booking.allocation.solver.SatAllocator;
import org.standclear.platform.ids.BookingId;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.PersonId;

/** Bookings that lost their slots, placed together. Expected places are worked out by hand. */
class SolvedPlacesTests {

    private static final Instant NOON = Instant.parse("2026-03-12T12:00:00Z");
    private static final CellId DOWN = CellId.next();
    private static final CellId BITTERN = CellId.next();
    private static final CellId CURLEW = CellId.next();

    private final SolvedPlaces places =
            new SolvedPlaces(new SatAllocator(), () -> Duration.ofMinutes(30), () -> ZoneOffset.UTC);

    private static Booking booking(int startMinutes, int minutes, PersonId operator, @Nullable PersonId attendant) {
        Instant start = NOON.plus(Duration.ofMinutes(startMinutes));
        return new Booking(
                BookingId.next(),
                DOWN,
                start,
                start.plus(Duration.ofMinutes(minutes)),
                operator,
                attendant,
                null,
                null,
                null,
                BookingState.BOOKED,
                null,
                1);
    }

    private static Slot slot(CellId cell, int startMinutes, int minutes) {
        Instant start = NOON.plus(Duration.ofMinutes(startMinutes));
        return new Slot(cell, start, start.plus(Duration.ofMinutes(minutes)));
    }

    private static Disturbed disturbed(Booking booking, boolean due, Slot... could) {
        return new Disturbed(booking, due, List.of(could), List.of(could));
    }

    @Test
    void placesBothWhereOneAfterTheOtherWouldLeaveOneWithout() {
        Booking first = booking(0, 30, PersonId.next(), null);
        Booking second = booking(30, 30, PersonId.next(), null);
        Slot shared = slot(BITTERN, 15, 30);
        Slot later = slot(BITTERN, 75, 30);

        assertThat(places.find(List.of(disturbed(first, false, shared, later), disturbed(second, false, shared))))
                .containsEntry(first.id(), later)
                .containsEntry(second.id(), shared);
    }

    @Test
    void keepsNearTheOldTimeAndGivesWhatIsDueTheOnlySlot() {
        Booking calm = booking(0, 30, PersonId.next(), null);
        Booking due = booking(0, 30, PersonId.next(), null);
        Slot only = slot(BITTERN, 15, 30);
        assertThat(places.find(List.of(disturbed(calm, false, only), disturbed(due, true, only))))
                .containsOnlyKeys(due.id());

        Slot tomorrow = slot(BITTERN, 24 * 60, 30);
        Slot near = slot(CURLEW, 7, 30);
        assertThat(places.find(List.of(disturbed(calm, false, tomorrow, near))))
                .containsExactly(Map.entry(calm.id(), near));
    }

    @Test
    void putsNobodyIntoTwoPlaces() {
        PersonId noor = PersonId.next();
        PersonId mateo = PersonId.next();
        Booking one = booking(0, 30, noor, mateo);
        Booking swapped = booking(30, 30, mateo, noor);
        Slot here = slot(BITTERN, 15, 30);
        Slot there = slot(CURLEW, 15, 30);
        Slot later = slot(CURLEW, 45, 30);

        Map<BookingId, Slot> found = places.find(
                List.of(disturbed(one, false, here, there, later), disturbed(swapped, false, here, there, later)));

        assertThat(found).hasSize(2);
        Slot first = Objects.requireNonNull(found.get(one.id()));
        Slot second = Objects.requireNonNull(found.get(swapped.id()));
        assertThat(first.overlaps(second.start(), second.end())).isFalse();
    }

    @Test
    void aLongerTurnTakesTheNextSlotOfItsCellToo() {
        Booking longer = booking(0, 45, PersonId.next(), null);
        Booking usual = booking(30, 30, PersonId.next(), null);
        Slot wide = slot(BITTERN, 15, 45);
        Slot inIt = slot(BITTERN, 45, 30);
        Slot after = slot(BITTERN, 75, 30);

        assertThat(places.find(List.of(disturbed(longer, false, wide), disturbed(usual, false, inIt, after))))
                .containsEntry(longer.id(), wide)
                .containsEntry(usual.id(), after);
    }

    @Test
    void keepsTheTurnWhenItsAttendantCannotComeAnywhere() {
        Booking booking = booking(0, 30, PersonId.next(), PersonId.next());
        Slot slot = slot(BITTERN, 15, 30);
        assertThat(places.find(List.of(new Disturbed(booking, false, List.of(slot), List.of()))))
                .containsExactly(Map.entry(booking.id(), slot));
        assertThat(places.find(List.of(new Disturbed(booking, false, List.of(), List.of()))))
                .isEmpty();
    }
}
