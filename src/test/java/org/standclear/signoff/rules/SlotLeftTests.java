package org.standclear.signoff.rules;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.standclear.booking.Booking;
import org.standclear.booking.BookingState;

class SlotLeftTests {

    private static Optional<String> over(BookingState state, Instant now) {
        Booking ready = Bench.booking(Bench.MATEO.id(), Bench.REVISION.id());
        Booking booking = new Booking(
                ready.id(),
                ready.cell(),
                ready.start(),
                ready.end(),
                ready.operator(),
                ready.attendant(),
                null,
                null,
                ready.revision(),
                state,
                ready.checkedInAt(),
                3);
        return SlotLeft.over(booking, now, at -> at.toString().substring(11, 19));
    }

    @Test
    void aReleaseMayBeSignedUntilAMinuteBeforeTheEnd() {
        assertThat(over(BookingState.READY, Bench.END.minusSeconds(61))).isEmpty();
        assertThat(over(BookingState.READY, Bench.END.minusSeconds(60))).isEmpty();
        assertThat(over(BookingState.READY, Bench.END.minusSeconds(60).plusNanos(1000)))
                .contains("The slot ends at 13:37:00: a release could be signed until 13:36:00.");
        assertThat(over(BookingState.READY, Bench.END.minusNanos(1000))).isPresent();
        assertThat(over(BookingState.READY, Bench.END)).contains("The slot ended at 13:37:00.");
    }

    /** What was released may be started until its own end, and what runs is stopped by nobody here. */
    @ParameterizedTest
    @EnumSource(
            value = BookingState.class,
            names = {"BOOKED", "CHECKED", "READY"},
            mode = EnumSource.Mode.EXCLUDE)
    void asksNoMoreOnceItIsReleased(BookingState state) {
        assertThat(over(state, Bench.END.plusSeconds(60))).isEmpty();
    }
}
