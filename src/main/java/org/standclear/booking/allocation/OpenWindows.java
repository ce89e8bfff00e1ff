package org.standclear.booking.allocation;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.springframework.stereotype.Service;
import org.standclear.booking.SharedWindows;
import org.standclear.core.allocation.Span;
import org.standclear.platform.ids.Id;
import org.standclear.platform.ids.PersonId;

/** The door of this room. */
@Service
class OpenWindows implements SharedWindows {

    private final Windows windows;
    private final TurnRequests requests;

    OpenWindows(Windows windows, TurnRequests requests) {
        this.windows = windows;
        this.requests = requests;
    }

    @Override
    public UUID open(String title, LocalDate firstDay, LocalDate lastDay, Instant requestsUntil, PersonId by) {
        return windows.open(title, firstDay, lastDay, requestsUntil, by);
    }

    @Override
    public void ask(UUID window, Wanted wanted) {
        List<Span> spans = wanted.canCome().stream()
                .map(stretch -> new Span(stretch.from(), stretch.until()))
                .toList();
        requests.ask(new TurnRequest(
                Id.newValue(),
                window,
                wanted.operator(),
                wanted.partner(),
                wanted.assignment(),
                wanted.tool(),
                wanted.turns(),
                wanted.attends(),
                false,
                spans,
                spans.subList(0, Math.min(1, spans.size()))));
    }
}
