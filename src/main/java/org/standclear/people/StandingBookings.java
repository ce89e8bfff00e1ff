package org.standclear.people;

import java.util.Collection;
import org.standclear.platform.ids.PersonId;

/** Asked before people are taken out of a section, and told of it: answered by who knows bookings. */
public interface StandingBookings {

    /** How many bookings of these people are still ahead. */
    int aheadOf(Collection<PersonId> people);

    /** Tells the person, if any booking is ahead, that they left the section and that their bookings stay. */
    void tellOfLeaving(PersonId person, String section);

    /** Tells the person, if any booking is ahead, that they are in the section again. */
    void tellOfReturn(PersonId person, String section);
}
