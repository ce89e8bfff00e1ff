package org.standclear.run.web;

import java.util.Locale;
import org.standclear.booking.BookingState;
import org.standclear.cell.CellState;
import org.standclear.run.RunState;

/** The shapes that states are drawn with. */
final class StateMarks {

    private StateMarks() {}

    static String of(CellState state) {
        return state.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    static String of(BookingState state) {
        return state == BookingState.MOVED_BY_STAFF
                ? "moved"
                : state.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    static String of(RunState state) {
        return state.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
