package org.standclear.desk.web;

import java.util.List;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import org.standclear.desk.web.TechnicianDesk.Due;
import org.standclear.desk.web.TechnicianDesk.Open;
import org.standclear.desk.web.TechnicianDesk.Start;

/** The first line of the technician's desk. */
final class DeskHeadline {

    private DeskHeadline() {}

    /** What is most urgent: at a cell first, then before the day, then the next start. */
    static String of(List<Start> starts, List<Due> tests, List<Open> open) {
        String swaps = cells(open, Open::swap);
        String stopped = cells(open, run -> run.state().equals("stopped"));
        if (!swaps.isEmpty() || !stopped.isEmpty()) {
            return swaps.isEmpty()
                    ? "Stopped, and waits for its reset: " + stopped + "."
                    : "Swap the e-stop attendant: " + swaps + ".";
        }
        if (!tests.isEmpty()) {
            return tests.get(0).what() + " on " + tests.stream().map(Due::cell).collect(Collectors.joining(", ")) + ".";
        }
        if (!starts.isEmpty()) {
            Start next = starts.get(0);
            return "Next: " + next.cell() + " " + next.span() + ", " + next.operator() + ".";
        }
        return open.isEmpty()
                ? "Nothing starts any more today."
                : "Not closed out: " + open.get(0).cell() + ".";
    }

    private static String cells(List<Open> open, Predicate<Open> which) {
        return open.stream().filter(which).map(Open::cell).collect(Collectors.joining(", "));
    }
}
