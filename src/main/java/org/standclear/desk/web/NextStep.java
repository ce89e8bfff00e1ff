package org.standclear.desk.web;

import java.time.Instant;
import org.jspecify.annotations.Nullable;
import org.standclear.booking.Booking;
import org.standclear.booking.BookingSettings;
import org.standclear.booking.BookingState;

/**
 * What a booking waits for, and who does it.
 *
 * @param says one sentence
 * @param act what the button says; null when the reader has nothing to do
 * @param href where the button leads; null when the act is the check-in form
 */
record NextStep(String says, @Nullable String act, @Nullable String href) {

    /** Whether the act is a form that checks in; templates ask it. */
    public boolean isCheckIn() {
        return act != null && href == null;
    }

    /** Whether the button leads to a page with that ending; templates ask it. */
    public boolean leadsTo(String ending) {
        return href != null && href.endsWith(ending);
    }

    /**
     * The next step of a booking.
     *
     * @param cell the cell's name
     * @param operates whether the reader is the operator, or staff
     */
    static NextStep of(Booking booking, String cell, boolean operates, BookingSettings settings, Instant now) {
        String bench = "/bench/" + booking.cell();
        return switch (booking.state()) {
            case BOOKED, CHECKED -> before(booking, cell, operates, settings, now);
            case READY ->
                over(booking, now)
                        ? unused()
                        : new NextStep("Waits for the release by lab staff on duty.", "Go to the bench page", bench);
            case RELEASED ->
                booking.attendant() == null
                        ? step(
                                operates,
                                "Released, but the e-stop attendant left: it waits until somebody else signs.",
                                "Name the attendant",
                                "/bookings/" + booking.id() + "/attendant")
                        : new NextStep("Released: the run may start at the bench.", "Go to the bench page", bench);
            case RUNNING -> new NextStep("The run goes on.", "Go to the bench page", bench);
            case STOPPED ->
                new NextStep(
                        "Stopped: lab staff record the cause before anything moves again.",
                        "Go to the bench page",
                        bench);
            case FINISHED ->
                new NextStep(
                        "Finished: the close-out is open, and the next release on " + cell + " waits for it.",
                        "Close out at the bench",
                        bench);
            case CLOSED_OUT -> new NextStep("Closed out. Nothing is left to do.", null, null);
            case MISSED ->
                new NextStep(
                        "Missed: nobody checked in within " + settings.graceMinutes()
                                + " min of the start, and the slot was given free.",
                        "Book another slot",
                        "/book");
            case CANCELLED -> new NextStep("Cancelled; nothing was counted.", "Book another slot", "/book");
            case LATE_CANCELLED -> new NextStep("Cancelled late; it counts once.", "Book another slot", "/book");
            case MOVED_BY_STAFF ->
                new NextStep("Lab staff took it off the calendar; nothing was counted.", "Book another slot", "/book");
        };
    }

    private static NextStep before(
            Booking booking, String cell, boolean operates, BookingSettings settings, Instant now) {
        if (over(booking, now)) {
            return unused();
        }
        String page = "/bookings/" + booking.id();
        if (booking.revision() == null) {
            return step(
                    operates,
                    "No program is named yet; it can follow until the bench.",
                    "Name the program",
                    page + "/program");
        }
        if (booking.state() == BookingState.BOOKED) {
            return step(
                    operates,
                    "The program named is not within the limits of " + cell + " now, or not checked yet.",
                    "See what the check says",
                    page + "/program");
        }
        if (booking.attendant() == null) {
            return step(operates, "An e-stop attendant is needed.", "Name the attendant", page + "/attendant");
        }
        if (booking.checkedInAt() != null) {
            return new NextStep(
                    "Checked in: operator and attendant sign the session list at the bench.",
                    "Go to the bench page",
                    "/bench/" + booking.cell());
        }
        if (now.isBefore(booking.start().minus(settings.checkInOpens()))) {
            return new NextStep(
                    "All set. Check in at " + cell + " from " + settings.checkInOpensMinutes() + " min before to "
                            + settings.graceMinutes() + " min after the start.",
                    null,
                    null);
        }
        return new NextStep(
                "Check in at " + cell + ", at the latest " + settings.graceMinutes() + " min after the start.",
                operates ? "Check in" : null,
                null);
    }

    private static boolean over(Booking booking, Instant now) {
        return !booking.end().isAfter(now);
    }

    private static NextStep unused() {
        return new NextStep("The slot is over and the program did not run.", "Book another slot", "/book");
    }

    private static NextStep step(boolean operates, String says, String act, String href) {
        return new NextStep(says, operates ? act : null, operates ? href : null);
    }
}
