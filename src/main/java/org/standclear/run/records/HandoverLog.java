package org.standclear.run.records;

import java.time.Instant;
import org.springframework.stereotype.Component;
import org.standclear.booking.Booking;
import org.standclear.booking.Bookings;
import org.standclear.people.People;
import org.standclear.platform.ids.BookingId;
import org.standclear.platform.ids.PersonId;
import org.standclear.run.Run;
import org.standclear.run.RunEvent.Kind;
import org.standclear.signoff.AttendantChanges;
import org.standclear.signoff.Part;

/** Keeps in the run log who took over the e-stop while the run went on. */
@Component
class HandoverLog implements AttendantChanges {

    private final Bookings bookings;
    private final RunRows runs;
    private final EventWriter events;
    private final People people;

    HandoverLog(Bookings bookings, RunRows runs, EventWriter events, People people) {
        this.bookings = bookings;
        this.runs = runs;
        this.events = events;
        this.people = people;
    }

    @Override
    public void handedOver(BookingId id, PersonId from, PersonId to, Instant at) {
        Booking booking = bookings.lock(id);
        Run run = runs.of(id).orElseThrow();
        runs.involve(run, to, Part.ATTENDANT);
        String words = people.printedName(to) + " took over from " + people.printedName(from) + ".";
        events.add(booking, run, Kind.HANDOVER, null, "", words, to, at);
    }
}
