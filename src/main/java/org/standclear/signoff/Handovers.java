package org.standclear.signoff;

import java.util.List;
import java.util.Optional;
import org.standclear.platform.ids.BookingId;
import org.standclear.platform.ids.PersonId;

/** The e-stop changes hands in the middle of a slot: the next attendant signs for it, and the slot goes on. */
public interface Handovers {

    /** The turn of whoever is at the booking's e-stop now, by signature; empty when nobody is. */
    Optional<Turn> turn(BookingId booking);

    /** Who may take over the e-stop of the booking now, by printed name. */
    List<PersonId> mayTakeOver(BookingId booking);

    /**
     * Asks somebody to take over. While a release waits the person is named on the booking and the release is suspended
     * until they sign; while the run goes on the one before keeps the hand on the e-stop until then.
     */
    Asked ask(BookingId booking, PersonId next, PersonId by);

    /** The e-stop attendant of a release that waits went away, or of a booking before it; nobody is named now. */
    Asked left(BookingId booking, PersonId by);

    /** Gives up asking; whoever is at the e-stop stays there. */
    void giveUp(BookingId booking, PersonId by);

    /** Whether the person is asked to sign for the booking's e-stop now. */
    boolean awaits(BookingId booking, PersonId person);

    /** What came of asking. */
    sealed interface Asked {

        /** The next one signs on the bench screen or an own device. */
        record Opened() implements Asked {}

        /** Nobody was asked; says why. */
        record Refused(String says) implements Asked {}
    }
}
