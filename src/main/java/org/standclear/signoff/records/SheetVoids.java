package org.standclear.signoff.records;

import java.time.Instant;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import org.standclear.booking.Booking;
import org.standclear.booking.BookingState;
import org.standclear.cell.Cell;
import org.standclear.cell.CellStops;
import org.standclear.signoff.Lapse;
import org.standclear.signoff.Part;
import org.standclear.signoff.Release;
import org.standclear.signoff.Sheet;
import org.standclear.signoff.SignoffList;
import org.standclear.signoff.Turn;

/** Voids a list that is open about other people, another file or another cell than those that stand there now. */
@Component
class SheetVoids {

    private final CellStops stops;
    private final Repeats repeats;
    private final SheetRows sheets;
    private final EventRows events;
    private final ReleaseRows releases;
    private final Turns turns;
    private final SignoffTrail trail;

    SheetVoids(
            CellStops stops,
            Repeats repeats,
            SheetRows sheets,
            EventRows events,
            ReleaseRows releases,
            Turns turns,
            SignoffTrail trail) {
        this.stops = stops;
        this.repeats = repeats;
        this.sheets = sheets;
        this.events = events;
        this.releases = releases;
        this.turns = turns;
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
        if (sheet.list() == SignoffList.HANDOVER) {
            return handoverOver(sheet, booking)
                    ? new Foreign(
                            "list-void", "The release that the handover was for ended, or somebody else was named.")
                    : null;
        }
        if (!sheet.attendant().equals(booking.attendant())) {
            return new Foreign("list-void", "Another e-stop attendant is on the booking now.");
        }
        if (!stops.open(cell.id()).isEmpty()) {
            return new Foreign(Repeats.STOPPED, cell.name() + " was stopped while the list was open.");
        }
        if (sheet.list() == SignoffList.BENCH && repeats.testedOrTagged(sheet)) {
            return new Foreign(
                    "list-void", cell.name() + " was held, tagged or tested since: the values are read again.");
        }
        if (sheet.list() == SignoffList.BENCH && isLongTurn(sheet, now)) {
            return new Foreign(Repeats.LONG_TURN, longTurn(turns.of(sheet.attendant(), now)));
        }
        BookingState fits = sheet.list() == SignoffList.SESSION ? BookingState.CHECKED : BookingState.READY;
        return booking.state() == fits
                ? null
                : new Foreign("list-void", "The booking is " + booking.state().words() + " now.");
    }

    private static String longTurn(Turn turn) {
        return turn.told()
                ? "The turn of " + turn.limit().toMinutes()
                        + " min at the e-stop is over: somebody else takes the next one."
                : "How long the turn at the e-stop is can no longer be told, because the clock was set back: it is signed"
                        + " anew.";
    }

    private boolean isLongTurn(Sheet sheet, Instant now) {
        return sheet.signedBy(Part.ATTENDANT).isPresent()
                && turns.of(sheet.attendant(), now).over();
    }

    /** A handover is about a release that is suspended, or in use by a run that goes on. */
    private boolean handoverOver(Sheet sheet, Booking booking) {
        Release release = releases.latest(sheet.booking()).orElseThrow();
        boolean waits = booking.state() == BookingState.RELEASED
                && release.waits()
                && sheet.attendant().equals(booking.attendant());
        boolean runs = booking.state() == BookingState.RUNNING && release.lapsed() == null;
        return !waits && !runs;
    }
}
