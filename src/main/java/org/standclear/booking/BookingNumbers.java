package org.standclear.booking;

import org.standclear.platform.ids.PersonId;

/** Keeps the numbers of the booking rules, with who changed them and why. */
public interface BookingNumbers {

    /** The numbers in force in the lab that the pages serve. */
    BookingSettings inForce();

    /** Puts other numbers in force; the caller has checked that the person may. */
    void change(BookingSettings settings, PersonId by, String reason);
}
