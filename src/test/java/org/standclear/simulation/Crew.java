package org.standclear.simulation;

import java.util.function.Supplier;
import org.standclear.platform.ids.LabId;
import org.standclear.platform.lab.LabScope;

/** One lab of a term, and everything that people do in it. */
final class Crew {

    final Lab lab;
    final BookingActs booking;
    final Programs programs;
    final StaffActs staff;
    final UpkeepActs upkeep;
    final IncidentActs incidents;
    final CalendarActs calendar;
    final SlotActs slot;

    private final LabId id;

    Crew(LabId id, Lab lab) {
        this.id = id;
        this.lab = lab;
        booking = new BookingActs(lab);
        programs = new Programs(lab);
        staff = new StaffActs(lab);
        upkeep = new UpkeepActs(lab);
        incidents = new IncidentActs(lab);
        calendar = new CalendarActs(lab);
        slot = new SlotActs(lab, booking, programs, staff, new RunActs(lab), upkeep, incidents);
    }

    /** Reads or does something for this lab. */
    <T> T here(Supplier<T> work) {
        return LabScope.in(id, work);
    }
}
