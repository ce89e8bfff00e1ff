package org.standclear.run.records;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.springframework.stereotype.Component;
import org.standclear.booking.Booking;
import org.standclear.booking.BookingState;
import org.standclear.booking.Bookings;
import org.standclear.booking.Bookings.Transition;
import org.standclear.cell.CellStop;
import org.standclear.cell.CellStops;
import org.standclear.cell.Cells;
import org.standclear.platform.ids.BookingId;
import org.standclear.platform.ids.CellId;
import org.standclear.run.ResetCause;
import org.standclear.run.RunEvent;
import org.standclear.run.RunEvent.Kind;
import org.standclear.run.RunLog.Logged;
import org.standclear.run.RunLog.Witness;
import org.standclear.signoff.Lapse;
import org.standclear.signoff.Release;
import org.standclear.signoff.Releases;
import org.standclear.signoff.SignoffRecord;

/** Records causes of stops. A reset opens the cell's gate for the next list; it never restarts anything. */
@Component
class Resets {

    private final Bookings bookings;
    private final Releases releases;
    private final SignoffRecord signed;
    private final Cells cells;
    private final CellStops stops;
    private final StopLog stopLog;
    private final RunRows runs;
    private final EventWriter events;
    private final Witnesses witnesses;
    private final CreditRows credits;

    Resets(
            Bookings bookings,
            Releases releases,
            SignoffRecord signed,
            Cells cells,
            CellStops stops,
            StopLog stopLog,
            RunRows runs,
            EventWriter events,
            Witnesses witnesses,
            CreditRows credits) {
        this.bookings = bookings;
        this.releases = releases;
        this.signed = signed;
        this.cells = cells;
        this.stops = stops;
        this.stopLog = stopLog;
        this.runs = runs;
        this.events = events;
        this.witnesses = witnesses;
        this.credits = credits;
    }

    /** What was found, and who vouches for it. */
    record Found(ResetCause cause, String words, Witness by) {}

    Logged at(CellId cell, Found found, Instant now) {
        Optional<BookingId> booked = stopLog.booking(cell, now);
        if (booked.isPresent()) {
            return of(bookings.lock(booked.get()), found, now);
        }
        cells.lock(cell);
        Optional<Logged> refused = refusal(found, stops.open(cell), false);
        if (refused.isPresent()) {
            return refused.get();
        }
        RunEvent event = events.unbooked(
                cell, Kind.RESET, found.cause().code(), words(found), found.by().signer(), now);
        reset(cell, found, now);
        return new Logged.Kept(event);
    }

    /** The booking is locked. */
    Logged of(Booking booking, Found found, Instant now) {
        cells.lock(booking.cell());
        boolean stopped = booking.state() == BookingState.STOPPED;
        Optional<Logged> refused = refusal(found, stops.open(booking.cell()), stopped);
        if (refused.isPresent()) {
            return refused.get();
        }
        if (stopped) {
            afterStop(booking, found);
        }
        if (!found.cause().shortList()) {
            releases.askFullList(
                    booking.id(), "After a stop (" + found.cause().words() + ") the full bench list is read again.");
        }
        creditPrecaution(booking, found, now);
        reset(booking.cell(), found, now);
        return new Logged.Kept(events.add(
                booking,
                runs.of(booking.id()).orElse(null),
                Kind.RESET,
                null,
                found.cause().code(),
                words(found),
                found.by().signer(),
                now));
    }

    private void creditPrecaution(Booking booking, Found found, Instant now) {
        if (found.cause() == ResetCause.PRECAUTION) {
            stops.open(booking.cell()).stream()
                    .map(CellStop::at)
                    .min(java.util.Comparator.naturalOrder())
                    .ifPresent(from -> credits.credit(
                            booking,
                            runs.of(booking.id()).orElse(null),
                            from,
                            now,
                            found.by().signer(),
                            now));
        }
    }

    private Optional<Logged> refusal(Found found, List<CellStop> open, boolean stopped) {
        Optional<Logged> notStaff = witnesses.refusal(found.by());
        if (notStaff.isPresent()) {
            return notStaff;
        }
        if (open.isEmpty() && !stopped) {
            return Optional.of(new Logged.Refused("state", "No stop on this cell waits for its reset."));
        }
        return found.cause() == ResetCause.PRECAUTION && open.stream().anyMatch(CellStop::armStoppedItself)
                ? Optional.of(new Logged.Refused(
                        "cause",
                        "The arm stopped itself, so it was no precaution. Find out why, then choose that cause."))
                : Optional.empty();
    }

    private void afterStop(Booking booking, Found found) {
        Release used = releases.latest(booking.id()).orElseThrow();
        Optional<Lapse> check = signed.lapsesSince(used).stream()
                .filter(lapse -> lapse.what().equals("check"))
                .findFirst();
        if (check.isPresent()) {
            JdbcRunLog.moved(bookings.checkedAfterStop(booking.id(), found.by().signer()));
            JdbcRunLog.moved(bookings.backToBooked(booking.id(), check.get().because()));
            return;
        }
        Transition moved = used.attendant().equals(booking.attendant())
                ? bookings.readyAfterStop(booking.id(), found.by().signer())
                : bookings.checkedAfterStop(booking.id(), found.by().signer());
        JdbcRunLog.moved(moved);
    }

    private void reset(CellId cell, Found found, Instant now) {
        stops.reset(
                cell,
                new CellStop.Reset(
                        found.by().signer(), now, found.cause().code(), found.cause() == ResetCause.PRECAUTION));
    }

    private static String words(Found found) {
        Witness by = found.by();
        String how = by.account().equals(by.signer()) ? "own sign-in" : "signing PIN";
        String more = found.words().isBlank() ? "" : " " + found.words().strip();
        return "Cause: " + found.cause().words() + "." + more + " Signed by " + how + ".";
    }
}
