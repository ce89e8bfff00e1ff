package org.standclear.report;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.standclear.core.quantity.Interval;
import org.standclear.core.statistics.Confidence;
import org.standclear.core.statistics.CountComparison;
import org.standclear.core.statistics.EventCount;
import org.standclear.core.statistics.Share;
import org.standclear.platform.ids.PersonId;

/**
 * What a term's record says, with the exposure that every count belongs to.
 *
 * @param between starts between one event and the next, first to last, and since the last one
 */
public record TermReport(
        TermSpan span,
        Exposure exposure,
        List<Counted> counts,
        RunsBetween between,
        List<CellUse> cells,
        List<Authorised> authorisations,
        List<Action> actions,
        Fairness fairness,
        TermUpkeep upkeep) {

    /** What rates are told per. */
    public static final double RATE_UNIT = 1000;

    public TermReport {
        counts = List.copyOf(counts);
        cells = List.copyOf(cells);
        authorisations = List.copyOf(authorisations);
        actions = List.copyOf(actions);
    }

    /**
     * What could go wrong how often.
     *
     * @param attendedMinutes from each start to its stop or end, with a hand on the e-stop
     */
    public record Exposure(int runs, int starts, long attendedMinutes, int passes) {}

    /** Events of one kind in the term. */
    public record Counted(String code, String words, int events) {

        /** The exact limits of the mean. */
        public Interval limits() {
            return new EventCount(events).limits(Confidence.OF_REPORTS);
        }

        /** Whether it happens in starts; a release that lapsed and an answer that was read again may have had none. */
        public boolean happensInStarts() {
            return !code.equals("LAPSED") && !code.equals("DISAGREED");
        }

        /** The exact limits of the rate per 1000 starts; null without any start, and for what does not happen in them. */
        public @Nullable Interval rate(Exposure exposure) {
            return exposure.starts() == 0 || !happensInStarts()
                    ? null
                    : new EventCount(events).rateLimits(exposure.starts(), RATE_UNIT, Confidence.OF_REPORTS);
        }

        /** The two counts, each over its starts; null unless both terms had starts. */
        public @Nullable CountComparison against(Counted before, int starts, int startsBefore) {
            return starts == 0 || startsBefore == 0
                    ? null
                    : new CountComparison(new EventCount(events), starts, new EventCount(before.events), startsBefore);
        }
    }

    /** Counts and the starts that they happened in. */
    public record Happened(int starts, List<Counted> counts) {

        public Happened {
            counts = List.copyOf(counts);
        }
    }

    /** Starts between events: near misses and worse, and protective stops. */
    public record RunsBetween(List<Integer> gaps, int sinceLast) {

        public RunsBetween {
            gaps = List.copyOf(gaps);
        }
    }

    /**
     * How a cell was used and looked after.
     *
     * @param untestedDays days with a start and without a day test that passed
     */
    public record CellUse(
            String cell,
            int starts,
            int daysInUse,
            int testsPassed,
            int testsFailed,
            int untestedDays,
            int holds,
            int tags,
            int versions) {}

    /** Authorisations of one duty: standing at the end of the term, granted and ended early in it. */
    public record Authorised(String duty, int standing, int granted, int revoked, int endingSoon) {}

    /** A corrective action that was open in the term. */
    public record Action(
            int incident,
            String words,
            String level,
            PersonId owner,
            LocalDate due,
            @Nullable Instant doneAt,
            @Nullable Boolean effective) {}

    /**
     * How use was shared among those who are enrolled.
     *
     * @param runsEach runs of each enrolled student, fewest first
     */
    public record Fairness(List<Integer> runsEach, int bookings, int missed, int cancelledLate, int movedByStaff) {

        public Fairness {
            runsEach = List.copyOf(runsEach);
        }

        /** Enrolled students without a run; null when nobody is enrolled. */
        public @Nullable Share without() {
            return runsEach.isEmpty()
                    ? null
                    : new Share(
                            (int) runsEach.stream().filter(runs -> runs == 0).count(), runsEach.size());
        }

        /** The middle one, of an even number the mean of the middle two; 0 when nobody is enrolled. */
        public double median() {
            int count = runsEach.size();
            return count == 0 ? 0 : (runsEach.get((count - 1) / 2) + runsEach.get(count / 2)) / 2.0;
        }
    }
}
