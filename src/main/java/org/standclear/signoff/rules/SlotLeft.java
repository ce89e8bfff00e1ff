package org.standclear.signoff.rules;

import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import java.util.function.Function;
import org.standclear.booking.Booking;
import org.standclear.booking.BookingState;

/** Whether enough of the slot is left to release and start in: a release ends with its slot and is never stretched. */
public final class SlotLeft {

    /** Under that nobody starts in time; the list alone takes longer (02, section 4). From the lab's practice, no standard. */
    public static final Duration LEAST = Duration.ofMinutes(1);

    private SlotLeft() {}

    /** Why no release of the booking is signed any more; empty before that, and once it is released. */
    public static Optional<String> over(Booking booking, Instant now, Function<Instant, String> time) {
        boolean before = booking.state().ordinal() < BookingState.RELEASED.ordinal();
        Instant until = booking.end().minus(LEAST);
        if (!before || !now.isAfter(until)) {
            return Optional.empty();
        }
        return Optional.of(
                now.isBefore(booking.end())
                        ? "The slot ends at " + time.apply(booking.end()) + ": a release could be signed until "
                                + time.apply(until) + "."
                        : "The slot ended at " + time.apply(booking.end()) + ".");
    }
}
