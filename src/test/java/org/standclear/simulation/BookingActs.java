package org.standclear.simulation;

import java.time.Instant;
import org.jspecify.annotations.Nullable;
import org.standclear.booking.Booking;
import org.standclear.booking.BookingDesk.Outcome;
import org.standclear.booking.MakeBooking;
import org.standclear.people.Person;
import org.standclear.platform.ids.CellId;

/** What happens to bookings away from the robot. */
final class BookingActs {

    private final Lab lab;

    BookingActs(Lab lab) {
        this.lab = lab;
    }

    /** Two may want the same slot or the same person; one of them is told so. */
    String book(CellId cell, Instant start) {
        Person operator =
                lab.chance.percent(85) ? lab.chance.one(lab.cast.students) : lab.chance.one(lab.cast.technicians);
        Person attendant = lab.chance.percent(80) ? lab.chance.one(lab.cast.everybody()) : null;
        return book(cell, start, operator, attendant);
    }

    private String book(CellId cell, Instant start, Person operator, @Nullable Person attendant) {
        Outcome outcome = lab.doors
                .bookingDesk()
                .book(new MakeBooking(
                        cell,
                        start,
                        operator.id(),
                        attendant == null ? null : attendant.id(),
                        null,
                        null,
                        operator.id()));
        if (outcome instanceof Outcome.Booked booked) {
            lab.made.add(booked.booking().id());
            return "booked " + operator.printedName();
        }
        return ((Outcome.Refused) outcome).rule();
    }

    String nameAttendant(Booking booking) {
        Person attendant = lab.chance.one(lab.cast.everybody());
        if (attendant.id().equals(booking.operator())) {
            return "asked the operator, who shook the head";
        }
        return attendant.printedName() + " "
                + Lab.word(lab.doors.bookings().nameAttendant(booking.id(), attendant.id(), booking.operator()));
    }

    String leaveOpen(Booking booking) {
        return Lab.word(lab.doors.bookings().askForAttendant(booking.id(), booking.operator()));
    }

    String cancel(Booking booking) {
        return Lab.word(lab.doors.bookingDesk().cancel(booking.id(), booking.operator()));
    }

    String moveByStaff(Booking booking) {
        return Lab.word(
                lab.doors.bookingDesk().moveByStaff(booking.id(), lab.cast.instructor.id(), "the cell is needed"));
    }

    String checkIn(Booking booking) {
        return Lab.word(lab.doors.bookings().checkIn(booking.id(), booking.operator()));
    }
}
