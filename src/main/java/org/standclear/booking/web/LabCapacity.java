package org.standclear.booking.web;

import java.time.LocalDate;
import java.util.Map;
import java.util.TreeMap;
import org.springframework.stereotype.Component;
import org.standclear.booking.Booking;
import org.standclear.booking.SlotCalendar;
import org.standclear.core.forecast.LabDays;
import org.standclear.platform.ids.AssignmentId;

/** What the lab can give on each day, and what is taken of it by anything but one assignment. */
@Component
class LabCapacity {

    private final SlotCalendar calendar;

    LabCapacity(SlotCalendar calendar) {
        this.calendar = calendar;
    }

    /** Slots on cells that run, and those of them that others have. */
    record Days(LabDays lab, Map<LocalDate, Double> taken) {}

    Days between(LocalDate first, LocalDate last, AssignmentId assignment) {
        Map<LocalDate, Integer> turns = new TreeMap<>();
        Map<LocalDate, Double> taken = new TreeMap<>();
        for (LocalDate day = first; !day.isAfter(last); day = day.plusDays(1)) {
            int slots = 0;
            double others = 0;
            for (SlotCalendar.CellDay cell : calendar.day(day).cells()) {
                if (!cell.cell().state().mayRun()) {
                    continue;
                }
                slots += cell.free().size();
                for (Booking booking : cell.bookings()) {
                    slots++;
                    others += assignment.equals(booking.assignment()) ? 0 : 1;
                }
            }
            turns.put(day, slots);
            if (others > 0) {
                taken.put(day, others);
            }
        }
        return new Days(new LabDays(turns), taken);
    }
}
