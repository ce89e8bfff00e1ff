package org.standclear.booking;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.standclear.platform.ids.AssignmentId;
import org.standclear.platform.ids.PersonId;

/** Days whose slots are shared out by a plan, for features that open one or ask in one. */
public interface SharedWindows {

    /** Opens days for requests; the caller has checked that the person may. */
    UUID open(String title, LocalDate firstDay, LocalDate lastDay, Instant requestsUntil, PersonId by);

    /** Asks, in the place of what the person asked for before. */
    void ask(UUID window, Wanted wanted);

    /**
     * What somebody asks for.
     *
     * @param partner who stands at the e-stop; null when somebody else has to
     * @param turns 0 for who only stands at e-stops
     * @param attends whether the person stands at the e-stop of others
     * @param canCome stretches of time, the dearest first
     */
    record Wanted(
            PersonId operator,
            @Nullable PersonId partner,
            @Nullable AssignmentId assignment,
            String tool,
            int turns,
            boolean attends,
            List<Stretch> canCome) {

        public Wanted {
            canCome = List.copyOf(canCome);
        }
    }

    /** From an instant until another. */
    record Stretch(Instant from, Instant until) {}
}
