package org.standclear.report;

import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** How cells were kept in a term: what came round, what hung on them, what was set aside, what was made up for. Names nobody. */
public record TermUpkeep(List<Duty> duties, List<Tags> tags, List<Waived> waivers, MakeUps makeUps) {

    public TermUpkeep {
        duties = List.copyOf(duties);
        tags = List.copyOf(tags);
        waivers = List.copyOf(waivers);
    }

    /**
     * An inspection or a risk-assessment review of one cell.
     *
     * @param intervalDays how often at the end of the term; null when nobody has said
     * @param done how often it was done in the term
     * @param fellDue how often its last day lay in the term without its having been done before
     * @param overdueDays days of the term on which it was late
     * @param next its last day as known at the end of the term; null without an interval
     * @param lateAtEnd whether it was late on the last day
     */
    public record Duty(
            String cell,
            String what,
            @Nullable Integer intervalDays,
            int done,
            int fellDue,
            int overdueDays,
            @Nullable LocalDate next,
            boolean lateAtEnd) {}

    /**
     * Restrictions, holds or tags of one kind on one cell.
     *
     * @param hung how many hung at any time of the term
     * @param hours for how long together, within the term
     * @param stillHanging how many hung at its end
     */
    public record Tags(String cell, String kind, int hung, double hours, int stillHanging) {}

    /**
     * Waivers of one cell that were given in the term.
     *
     * @param used for a run that was started
     * @param checks which checks were set aside, with how often
     */
    public record Waived(String cell, int given, int used, int takenBack, String checks) {}

    /** Turns that were lost without fault: granted in the term, and what became of those up to its end. */
    public record MakeUps(int granted, int used, int withdrawn, int expired, int standing) {}
}
