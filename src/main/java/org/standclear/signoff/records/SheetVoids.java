package org.standclear.signoff.records;

import java.time.Duration;
import java.time.Instant;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import org.standclear.booking.Booking;
import org.standclear.booking.BookingState;
import org.standclear.cell.Cell;
import org.standclear.cell.CellStops;
import org.standclear.signoff.Lapse;
import org.standclear.signoff.Part;
import org.standclear.signoff.Sheet;
import org.standclear.signoff.SignoffList;

/** Voids a list that is open about other people, another file or another cell than those that stand there now. */
@Component
class SheetVoids {

    /** An attendant who has signed and waited longer than this signs anew. */
    static final Duration LONGEST_TURN = Duration.ofMinutes(15);

    private final CellStops stops;
    private final Repeats repeats;
    private final SheetRows sheets;
    private final EventRows events;
    private final SignoffTrail trail;

    SheetVoids(CellStops stops, Repeats repeats, SheetRows sheets, EventRows events, SignoffTrail trail) {
        this.stops = stops;
        this.repeats = repeats;
        this.sheets = sheets;
        this.events = events;
        this.trail = trail;
    }

    /** Why a list is void, and the code under which its signatures lapse. */
    private record Foreign(String code, String because) {}

    void check(Booking booking, Cell cell, Instant now) {
        Sheet open = sheets.open(booking.id()).orElse(null);
        Foreign foreign = open == null ? null : foreign(open, booking, cell, now);
        if (open == null || foreign == null) {
            return;
        }
        sheets.close(open.id(), Sheet.Outcome.VOID, foreign.because(), now);
        if (!open.signatures().isEmpty()) {
            events.addLapse(new Lapse(booking.id(), null, open.list().words(), foreign.code(), foreign.because(), now));
        }
        trail.sheetVoid(open, foreign.because());
    }

    private @Nullable Foreign foreign(Sheet sheet, Booking booking, Cell cell, Instant now) {
        if (!sheet.revision().equals(booking.revision())) {
            return new Foreign("list-void", "Another program is on the booking now.");
        }
        if (sheet.cellVersion() != cell.currentVersion()) {
            return new Foreign("list-void", cell.name() + " is at version " + cell.currentVersion() + " now.");
        }
        if (!sheet.attendant().equals(booking.attendant())) {
            return new Foreign("list-void", "Another e-stop attendant is on the booking now.");
        }
        if (!stops.open(cell.id()).isEmpty()) {
            return new Foreign(Repeats.STOPPED, cell.name() + " was stopped while the list was open.");
        }
        if (sheet.list() == SignoffList.BENCH && repeats.testedOrTagged(cell, sheet.openedAt(), now)) {
            return new Foreign(
                    "list-void", cell.name() + " was held, tagged or tested since: the values are read again.");
        }
        if (sheet.list() == SignoffList.BENCH && isLongTurn(sheet, now)) {
            return new Foreign(
                    Repeats.LONG_TURN,
                    "The e-stop attendant signed more than " + LONGEST_TURN.toMinutes()
                            + " min ago: swap, or sign anew.");
        }
        BookingState fits = sheet.list() == SignoffList.SESSION ? BookingState.CHECKED : BookingState.READY;
        return booking.state() == fits
                ? null
                : new Foreign("list-void", "The booking is " + booking.state().words() + " now.");
    }

    private static boolean isLongTurn(Sheet sheet, Instant now) {
        return sheet.signedBy(Part.ATTENDANT)
                .filter(signature -> signature.at().plus(LONGEST_TURN).isBefore(now))
                .isPresent();
    }
}
