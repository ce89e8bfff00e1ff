package org.standclear.people;

import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.standclear.platform.ids.PersonId;

/** Asked before people are taken out of a section, and told of it: answered by who knows the bookings of this lab. */
public interface StandingBookings {

    /** How many bookings of these people are still ahead. */
    int aheadOf(Collection<PersonId> people);

    /** Those of them who have any. */
    Set<PersonId> whoHasAny(Collection<PersonId> people);

    /** How many bookings each of them has ahead; without those who have none. */
    Map<PersonId, Integer> aheadOfEach(Collection<PersonId> people);

    /** Tells those who have bookings ahead which sections they left, course by course, and that their bookings stay. */
    void tellOfLeaving(Map<PersonId, List<SectionChange>> changes);

    /** Tells those who have bookings ahead what taking a roster back changed of their sections, course by course. */
    void tellOfReturn(Map<PersonId, List<SectionChange>> changes);
}
