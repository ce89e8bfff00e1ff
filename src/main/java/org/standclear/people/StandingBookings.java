package org.standclear.people;

import java.util.Collection;
import org.standclear.platform.ids.PersonId;

/** Asked before people are taken out of a section: answered by who knows bookings. */
public interface StandingBookings {

    /** How many bookings of these people are still ahead. */
    int aheadOf(Collection<PersonId> people);
}
