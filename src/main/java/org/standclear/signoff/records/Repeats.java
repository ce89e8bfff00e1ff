package org.standclear.signoff.records;

import java.util.List;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.springframework.stereotype.Component;
import org.standclear.booking.Booking;
import org.standclear.cell.Cell;
import org.standclear.cell.CellHistory;
import org.standclear.cell.CellStop;
import org.standclear.signoff.Lapse;
import org.standclear.signoff.LapseRule;
import org.standclear.signoff.Sheet;
import org.standclear.signoff.SignoffList;

/**
 * Decides whether the short list does: what it leaves out was read on the last full list of this slot, and nothing has
 * happened since then that a value could have changed in. What came since is told by numbers, not by times.
 */
@Component
class Repeats {

    /** The code under which the record says that the next bench list is the full one. */
    static final String FULL_LIST = "full-list-due";

    /** The code of a list that is void because the cell was stopped while it was open. */
    static final String STOPPED = "stop-not-reset";

    /** The code of a list that is void because the attendant has waited too long. */
    static final String LONG_TURN = "long-turn";

    /** Lapses that change nothing at the robot; any other asks for the full list. */
    private static final Set<String> CHANGE_NOTHING =
            Set.of(LapseRule.NOT_STARTED_IN_TIME.code(), LapseRule.E_STOP_PRESS.code(), STOPPED, LONG_TURN);

    private final CellHistory history;
    private final SheetRows sheets;
    private final ReleaseRows releases;
    private final EventRows events;

    Repeats(CellHistory history, SheetRows sheets, ReleaseRows releases, EventRows events) {
        this.history = history;
        this.sheets = sheets;
        this.releases = releases;
        this.events = events;
    }

    /** Whether the next bench list of this slot is a repeat: same people, file and cell, and nothing in between. */
    boolean isUnchanged(Booking booking, Cell cell) {
        List<Sheet> done = sheets.all(booking.id()).stream()
                .filter(sheet -> sheet.list() == SignoffList.BENCH)
                .filter(sheet -> sheet.closed() != null && sheet.closed().outcome() != Sheet.Outcome.VOID)
                .toList();
        List<Sheet> full = done.stream()
                .filter(sheet -> !sheet.brief() && outcome(sheet) == Sheet.Outcome.DONE)
                .toList();
        if (full.isEmpty() || outcome(done.get(done.size() - 1)) != Sheet.Outcome.DONE) {
            return false;
        }
        Sheet read = full.get(full.size() - 1);
        List<Sheet> since = done.subList(done.indexOf(read), done.size());
        SheetRows.Before before = sheets.before(read.id());
        List<Lapse> lapses = events.lapsesAfter(booking.id(), before.lapse());
        return since.stream().allMatch(sheet -> isAbout(sheet, booking, cell))
                && hasRunOrWasPressed(booking, since, lapses)
                && lapses.stream().allMatch(lapse -> CHANGE_NOTHING.contains(lapse.code()))
                && nothingAtTheCell(cell, before.cell());
    }

    private static Sheet.Outcome outcome(Sheet sheet) {
        Sheet.Closed closed = sheet.closed();
        return closed == null ? Sheet.Outcome.VOID : closed.outcome();
    }

    private static boolean isAbout(Sheet sheet, Booking booking, Cell cell) {
        return sheet.revision().equals(booking.revision())
                && sheet.cellVersion() == cell.currentVersion()
                && sheet.operator().equals(booking.operator())
                && sheet.attendant().equals(booking.attendant());
    }

    /** A repeat needs a first; only a press between the release and its start takes its place. */
    private boolean hasRunOrWasPressed(Booking booking, List<Sheet> since, List<Lapse> lapses) {
        Set<UUID> ids = since.stream().map(Sheet::id).collect(Collectors.toSet());
        boolean hasRun = releases.of(booking.id()).stream()
                .anyMatch(release -> release.usedAt() != null && ids.contains(release.sheet()));
        return hasRun || lapses.stream().anyMatch(lapse -> lapse.code().equals(LapseRule.E_STOP_PRESS.code()));
    }

    private boolean nothingAtTheCell(Cell cell, CellHistory.Kept before) {
        return !history.stoppedOrTestedSince(cell.id(), before)
                && history.stopsSince(cell.id(), before).stream().allMatch(Repeats::wasPrecaution);
    }

    /** Whether a hold, a tag or a day test came after the list was opened, so that what was read before is read again. */
    boolean testedOrTagged(Sheet sheet) {
        return history.stoppedOrTestedSince(
                sheet.cell(), sheets.before(sheet.id()).cell());
    }

    private static boolean wasPrecaution(CellStop stop) {
        CellStop.Reset reset = stop.reset();
        return reset != null && reset.precaution();
    }
}
