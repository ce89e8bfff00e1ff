package org.standclear.booking.allocation;

import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.standclear.core.allocation.Span;
import org.standclear.platform.ids.AssignmentId;
import org.standclear.platform.ids.PersonId;

/**
 * What somebody asks for in a window.
 *
 * @param partner who stands at the e-stop; null when the turns need an attendant
 * @param assignment null for turns outside any assignment
 * @param turns 0 for somebody who only stands at the e-stop of others
 * @param attends whether the person stands at the e-stop of others at those times
 * @param makeUp whether the first turn makes up for one lost without the person's fault
 * @param canCome when its people can come
 * @param wishes the dearest first
 */
public record TurnRequest(
        UUID id,
        UUID window,
        PersonId operator,
        @Nullable PersonId partner,
        @Nullable AssignmentId assignment,
        String tool,
        int turns,
        boolean attends,
        boolean makeUp,
        List<Span> canCome,
        List<Span> wishes) {

    public TurnRequest {
        canCome = List.copyOf(canCome);
        wishes = List.copyOf(wishes);
    }

    /** Who stands at the e-stop of its turns; nobody when it asks for none. */
    public Optional<PersonId> named() {
        return turns > 0 ? Optional.ofNullable(partner) : Optional.empty();
    }

    /** The same without a partner. */
    TurnRequest alone() {
        return new TurnRequest(id, window, operator, null, assignment, tool, turns, attends, makeUp, canCome, wishes);
    }
}
