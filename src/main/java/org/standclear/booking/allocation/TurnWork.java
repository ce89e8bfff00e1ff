package org.standclear.booking.allocation;

import java.util.HashSet;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import org.standclear.booking.BookingNumbers;
import org.standclear.booking.CellFit;
import org.standclear.booking.Turns;
import org.standclear.core.allocation.Work;
import org.standclear.people.Accommodations;
import org.standclear.people.Assignment;
import org.standclear.people.AssignmentNeeds.Needs;
import org.standclear.people.SlotLengths;
import org.standclear.platform.ids.PersonId;

/**
 * What somebody's turns take: their least length, the tool, what the cell has to have, whether a helper has to be there, and
 * how many of them make up for lost ones. Why is not asked.
 */
@Component
class TurnWork {

    private final Accommodations accommodations;
    private final SlotLengths lengths;
    private final BookingNumbers numbers;
    private final CellFit fit;
    private final Turns turns;

    TurnWork(Accommodations accommodations, SlotLengths lengths, BookingNumbers numbers, CellFit fit, Turns turns) {
        this.accommodations = accommodations;
        this.lengths = lengths;
        this.numbers = numbers;
        this.fit = fit;
        this.turns = turns;
    }

    /** The assignment's own tool comes before the one that was asked for. */
    Work of(PersonId operator, String tool, @Nullable Assignment assignment, CellFit.Offered offered) {
        Needs needs = fit.needs(operator, assignment == null ? null : assignment.id(), offered);
        Set<String> features = new HashSet<>(needs.features());
        features.add(WindowProblem.operatedBy(operator));
        int usual = numbers.inForce().slotMinutes();
        int own = lengths.minutesFor(operator, assignment == null ? null : assignment.course());
        boolean helper = accommodations
                .of(operator)
                .filter(Accommodations.Accommodation::helper)
                .isPresent();
        String needed = needs.tool();
        return new Work(needed == null ? tool : needed, Math.max(usual, own), features, helper);
    }

    /** How many make-ups the person has that can be used now. */
    int makeUps(PersonId operator) {
        return (int)
                turns.makeUpsOf(operator).stream().filter(Turns.MakeUp::stands).count();
    }
}
