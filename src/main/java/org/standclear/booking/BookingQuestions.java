package org.standclear.booking;

import java.util.List;
import org.standclear.platform.numbers.LabNumber;
import org.standclear.platform.numbers.LabNumber.Range;
import org.standclear.platform.numbers.LabNumber.Said;

/** What the form of the booking rules asks, in the order of {@link BookingSettings}. */
final class BookingQuestions {

    static final List<LabNumber> ALL = List.of(
            new LabNumber("slotMinutes", "Length of a slot, minutes", Range.of(10, 240), Said.of("slot", "min")),
            new LabNumber(
                    "horizonDays",
                    "Slots can be booked so many days ahead",
                    Range.of(1, 180),
                    Said.of("horizon", "days")),
            new LabNumber(
                    "futurePerPerson", "Bookings ahead of one person at a time", Range.of(0, 100), Said.of("ahead")),
            new LabNumber(
                    "weekPerPerson",
                    "Bookings of one person in a week, Monday to Sunday",
                    Range.of(0, 100).and("; late cancels and missed ones count"),
                    Said.of("a week")),
            new LabNumber(
                    "perAssignment",
                    "Bookings of one person for one assignment",
                    Range.of(0, 100).and("; this count does not start anew"),
                    Said.of("an assignment")),
            new LabNumber(
                    "lateReleaseHours",
                    "Free slots are open to all so many hours before",
                    Range.of(0, 336).and("; booked then, they are not counted"),
                    Said.of("open to all", "h before")),
            new LabNumber(
                    "lateCancelMinutes",
                    "A cancel is a late one so many minutes before",
                    Range.of(0, 2880),
                    Said.of("late cancel", "min")),
            new LabNumber(
                    "checkInOpensMinutes",
                    "Check-in opens so many minutes before",
                    Range.of(0, 240),
                    Said.of("check-in opens", "min before")),
            new LabNumber(
                    "graceMinutes",
                    "Grace after the start, minutes",
                    new Range(1, 240, "slotMinutes", "1 to the length of a slot; then the slot is free again"),
                    Said.of("grace", "min")),
            new LabNumber(
                    "offerMinutes",
                    "An offer from the waiting list stands, minutes",
                    Range.of(3, 240).and("; then the next one is asked"),
                    Said.of("offer stands", "min")),
            new LabNumber(
                    "confirmMinutes",
                    "A booking has to be confirmed so many minutes before",
                    Range.of(0, 2880)
                            .and(
                                    "; 0: nobody is asked. Naming the program confirms; an unconfirmed slot is free again"),
                    new Said("confirmation", " min before", "not asked")));

    private BookingQuestions() {}
}
