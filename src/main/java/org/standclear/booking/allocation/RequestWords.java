package org.standclear.booking.allocation;

import java.util.List;
import java.util.stream.Collectors;
import org.standclear.core.allocation.Span;
import org.standclear.platform.time.LabTime;

/** A request in a few words, for the window's page and for letters. */
public final class RequestWords {

    private static final int TIMES_SHOWN = 4;

    private RequestWords() {}

    /** "2 turns with G-02". */
    public static String turns(TurnRequest request) {
        return (request.turns() == 1 ? "1 turn" : request.turns() + " turns") + " with " + request.tool();
    }

    /** The first times at which the request's people can come, by the lab's clock, and how many more there are. */
    public static String times(TurnRequest request, LabTime labTime) {
        List<Span> times = Span.joined(request.canCome());
        String first = times.stream()
                .limit(TIMES_SHOWN)
                .map(span -> labTime.datedSpan(span.from(), span.until()))
                .collect(Collectors.joining(", "));
        int more = times.size() - TIMES_SHOWN;
        return more > 0 ? first + " and " + more + " more" : first;
    }
}
