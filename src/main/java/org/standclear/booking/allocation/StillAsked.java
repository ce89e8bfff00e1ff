package org.standclear.booking.allocation;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.springframework.stereotype.Component;
import org.standclear.core.allocation.Span;
import org.standclear.people.People;
import org.standclear.platform.ids.PersonId;

/**
 * Whether a plan still is what people ask for. A request that somebody sends again is another one, so a place stands for
 * what was asked only as long as its request is there.
 */
@Component
class StillAsked {

    private final TurnRequests requests;
    private final People people;

    StillAsked(TurnRequests requests, People people) {
        this.requests = requests;
        this.people = people;
    }

    /** Why the plan cannot be accepted as it is, with the names of those who changed their minds; the window is locked. */
    Optional<String> whyNot(Window window, List<PlannedTurn> turns) {
        Map<UUID, TurnRequest> asked = new HashMap<>();
        requests.of(window.id()).forEach(request -> asked.put(request.id(), request));
        Set<PersonId> changed = new LinkedHashSet<>();
        for (PlannedTurn turn : turns) {
            TurnRequest request = asked.get(turn.request());
            if (request == null) {
                changed.add(turn.operator());
            } else if (!attends(turn, request, asked)) {
                changed.add(turn.attendant());
            }
        }
        if (changed.isEmpty()) {
            return Optional.empty();
        }
        List<String> names = new ArrayList<>();
        changed.forEach(person -> names.add(people.printedName(person)));
        return Optional.of("Nothing was booked: "
                + (changed.size() == 1 ? "1 request" : changed.size() + " requests")
                + " changed since this plan was made (" + String.join(", ", names) + "). Search again.");
    }

    private static boolean attends(PlannedTurn turn, TurnRequest request, Map<UUID, TurnRequest> asked) {
        Span span = new Span(turn.start(), turn.end());
        return turn.attendant().equals(request.partner())
                || asked.values().stream()
                        .anyMatch(one -> one.operator().equals(turn.attendant())
                                && one.attends()
                                && Span.joined(one.canCome()).stream().anyMatch(free -> free.holds(span)));
    }
}
