package org.standclear.booking;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import org.standclear.booking.WaitingList.Offer;
import org.standclear.cell.Cell;
import org.standclear.cell.Cells;
import org.standclear.message.Message;
import org.standclear.message.Messages;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.time.LabTime;

/** What people are told about their bookings, in the transaction of the act. Says nothing that only staff may know. */
@Component
class BookingLetters {

    private final Messages messages;
    private final Cells cells;
    private final LabTime labTime;

    BookingLetters(Messages messages, Cells cells, LabTime labTime) {
        this.messages = messages;
        this.cells = cells;
        this.labTime = labTime;
    }

    /** Staff moved it: to the operator and to the attendants of before and after. */
    void moved(Booking before, Booking after, String reason) {
        List<String> lines = List.of(
                "From " + place(before.cell(), before.start(), before.end()) + " to "
                        + place(after.cell(), after.start(), after.end()) + ".",
                "Why: " + reason,
                "Nobody is counted for it. Program and purpose came along; the check is done anew.");
        tell(after.operator(), "booking-moved", "Your booking was moved to " + when(after), lines, after);
        Stream.of(before.attendant(), after.attendant())
                .filter(person -> person != null)
                .distinct()
                .forEach(person -> tell(
                        person,
                        "booking-moved",
                        person.equals(after.attendant())
                                ? "Your turn at the e-stop was moved to " + when(after)
                                : "You are not needed at the e-stop on " + when(before),
                        lines.subList(0, 2),
                        person.equals(after.attendant()) ? after : before));
    }

    /** Staff took it off the calendar. */
    void takenOff(Booking booking, String reason) {
        everybody(booking, "booking-taken-off", "Taken off the calendar: " + when(booking), List.of("Why: " + reason));
    }

    /** The lab could not move it anywhere. */
    void madeUp(Booking booking) {
        tell(
                booking.operator(),
                "make-up",
                "You have a make-up for " + when(booking),
                List.of(
                        "No other slot was free in the next days, so you are first on the waiting list.",
                        "You also have a make-up: one booking beyond the quotas."),
                booking);
    }

    /** What was moved in one act is back where it was. */
    void movedBack(Booking booking) {
        everybody(
                booking,
                "booking-moved",
                "Your booking is back on " + when(booking),
                List.of("Staff have undone the move. It stands on "
                        + place(booking.cell(), booking.start(), booking.end()) + "."));
    }

    /** Somebody gave it up: whoever else was to come need not come. */
    void cancelled(Booking booking, PersonId by) {
        people(booking).stream()
                .filter(person -> !person.equals(by))
                .forEach(person -> tell(
                        person,
                        "booking-cancelled",
                        (person.equals(booking.operator())
                                        ? "Your booking was cancelled: "
                                        : "You are not needed at the e-stop: ")
                                + when(booking),
                        List.of(
                                place(booking) + " was cancelled.",
                                person.equals(booking.operator())
                                        ? "Ask lab staff if you did not expect that."
                                        : "Your time is free again; nothing is counted for you."),
                        booking));
    }

    /** Nobody confirmed it in time. */
    void unconfirmed(Booking booking, int minutes) {
        everybody(
                booking,
                "booking-unconfirmed",
                "Given up: " + when(booking),
                List.of("Nobody had confirmed it " + minutes
                        + " min before the start, so the slot is free again. Nothing is counted."));
    }

    void offered(Offer offer) {
        String place =
                place(offer.slot().cell(), offer.slot().start(), offer.slot().end());
        messages.tell(Message.of(
                        offer.person(),
                        "offer",
                        "A slot is offered to you until " + labTime.time(offer.until()) + ", "
                                + labTime.day(offer.until()),
                        List.of(place + " is free.", "Take it, or leave it to the next."),
                        "/book/offers/" + offer.id())
                .once("offer:" + offer.id(), offer.until()));
    }

    /** Until when the operator has to say that they come; null when nobody asks. */
    void reminded(Booking booking, int hours, @Nullable Instant askedUntil) {
        List<String> lines = new ArrayList<>();
        lines.add(place(booking.cell(), booking.start(), booking.end()) + ".");
        if (booking.revision() == null) {
            lines.add("No program is named yet.");
        }
        if (booking.attendant() == null) {
            lines.add("It still needs an e-stop attendant.");
        }
        lines.add("If you cannot come, cancel it, so that somebody else can have it.");
        List<String> question = askedUntil == null ? lines : with(lines, sayByWhen(askedUntil));
        for (PersonId person : people(booking)) {
            boolean asked = askedUntil != null && person.equals(booking.operator());
            messages.tell(Message.of(
                            person,
                            "reminder",
                            (person.equals(booking.operator()) ? "Your booking: " : "Your turn at the e-stop: ")
                                    + when(booking),
                            asked ? question : lines,
                            "/bookings/" + booking.id() + (asked ? "/coming" : ""))
                    .once("reminder-" + hours + ":" + booking.id() + ":" + person, booking.start()));
        }
    }

    /** The question by itself, where a reminder does not come in time for it. */
    void asked(Booking booking, Instant until) {
        messages.tell(Message.of(
                        booking.operator(),
                        "confirm",
                        "Are you coming? " + when(booking),
                        List.of(place(booking.cell(), booking.start(), booking.end()) + ".", sayByWhen(until)),
                        "/bookings/" + booking.id() + "/coming")
                .once("confirm:" + booking.id(), until));
    }

    private String sayByWhen(Instant until) {
        return "Say by " + labTime.day(until) + " " + labTime.time(until)
                + " that you come, or name your program. Otherwise the slot is given to the next; nothing is counted.";
    }

    private static List<String> with(List<String> lines, String last) {
        List<String> all = new ArrayList<>(lines);
        all.add(last);
        return all;
    }

    private void everybody(Booking booking, String kind, String subject, List<String> lines) {
        people(booking).forEach(person -> tell(person, kind, subject, lines, booking));
    }

    private static List<PersonId> people(Booking booking) {
        @Nullable PersonId attendant = booking.attendant();
        return attendant == null ? List.of(booking.operator()) : List.of(booking.operator(), attendant);
    }

    private void tell(PersonId person, String kind, String subject, List<String> lines, Booking about) {
        messages.tell(Message.of(person, kind, subject, lines, "/bookings/" + about.id()));
    }

    private String when(Booking booking) {
        return name(booking.cell()) + ", " + labTime.day(booking.start()) + " " + labTime.time(booking.start());
    }

    /** A slot in words. */
    String place(Booking booking) {
        return place(booking.cell(), booking.start(), booking.end());
    }

    private String place(CellId cell, Instant start, Instant end) {
        return name(cell) + ", " + labTime.day(start) + ", " + labTime.times(start, end);
    }

    private String name(CellId cell) {
        return cells.find(cell).map(Cell::name).orElse("A cell");
    }
}
