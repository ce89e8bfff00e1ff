package org.standclear.demo;

import java.time.Duration;
import java.time.Instant;
import org.jspecify.annotations.Nullable;
import org.springframework.context.annotation.Profile;
import org.springframework.stereotype.Component;
import org.standclear.booking.BookingDesk;
import org.standclear.booking.MakeBooking;
import org.standclear.booking.Slot;
import org.standclear.booking.SlotCalendar;
import org.standclear.booking.WaitingList;
import org.standclear.people.Accommodations;
import org.standclear.people.Accommodations.Accommodation;
import org.standclear.platform.ids.BookingId;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.PersonId;

/** The waiting list and the arrangements of the demo. */
@Component
@Profile("demo")
class DemoTurns {

    private final WaitingList waitingList;
    private final Accommodations accommodations;
    private final SlotCalendar calendar;
    private final BookingDesk desk;

    DemoTurns(WaitingList waitingList, Accommodations accommodations, SlotCalendar calendar, BookingDesk desk) {
        this.waitingList = waitingList;
        this.accommodations = accommodations;
        this.calendar = calendar;
        this.desk = desk;
    }

    /** Somebody waits for the slot. */
    void join(CellId cell, Instant start, PersonId person, Roster.@Nullable Studies studies) {
        Expect.that(
                WaitingList.Joined.On.class,
                waitingList.join(new WaitingList.JoinWait(
                        person,
                        cell,
                        start,
                        start.plus(Duration.ofMinutes(30)),
                        studies == null ? null : studies.course(),
                        studies == null ? null : studies.assignment(),
                        person)),
                "joining the waiting list");
    }

    /** It was given up, is offered, and is taken. */
    BookingId take(PersonId person) {
        waitingList.round();
        WaitingList.Offer offer = waitingList.of(person).stream()
                .map(WaitingList.Waiting::offer)
                .filter(one -> one != null)
                .findFirst()
                .orElseThrow(() -> new IllegalStateException("the demo's script: nothing was offered"));
        return Expect.that(BookingDesk.Outcome.Booked.class, waitingList.accept(offer.id(), person), "taking an offer")
                .booking()
                .id();
    }

    /** A lower bench and longer slots from now on, and the first booking with them. */
    void arrange(PersonId person, PersonId attendant, PersonId staff, Instant from) {
        accommodations.set(person, new Accommodation(45, true, false), staff);
        for (Slot slot : calendar.nextFree(person, from, 10)) {
            BookingDesk.Outcome outcome =
                    desk.book(new MakeBooking(slot.cell(), slot.start(), person, attendant, null, null, staff));
            if (outcome instanceof BookingDesk.Outcome.Booked) {
                return;
            }
        }
    }
}
