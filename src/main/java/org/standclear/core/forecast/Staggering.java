package org.standclear.core.forecast;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;

/**
 * Looks for due dates by section that give more turns an open day or press the peak down: the fewest turns without an open
 * day first, then the lowest peak, then the smallest share not served, then the fewest days moved. Tries every combination while there are few of them, else one section after the other until
 * nothing gets better.
 *
 * @param arrival how people spread their turns
 * @param lab what the lab can give
 * @param takenAlready what is taken of the days already
 */
public record Staggering(Arrival arrival, LabDays lab, Map<LocalDate, Double> takenAlready) {

    private static final double ALL_COMBINATIONS = 20_000;

    /** Differences below this are no reason to move anybody's due date. */
    private static final double NOTICEABLE = 1e-9;

    public Staggering {
        takenAlready = Map.copyOf(takenAlready);
    }

    /** Due dates with what they lead to. */
    public record Suggestion(List<DueWave> waves, Forecast forecast) {

        public Suggestion {
            waves = List.copyOf(waves);
        }
    }

    private record Tried(List<DueWave> waves, Forecast forecast, long moved) {

        static final Comparator<Tried> BETTER_FIRST = Comparator.<Tried>comparingDouble(
                        tried -> tried.forecast().withoutDay())
                .thenComparingDouble(tried -> rounded(tried.forecast().peakUse()))
                .thenComparingDouble(tried -> rounded(tried.forecast().shareNotServed()))
                .thenComparingLong(Tried::moved);

        private static double rounded(double value) {
            return value == Double.POSITIVE_INFINITY ? value : Math.rint(value / NOTICEABLE) * NOTICEABLE;
        }
    }

    /** The best due dates on open days from the first to the last, both included; as asked when none is better. */
    public Suggestion suggest(List<DueWave> asked, LocalDate first, LocalDate last) {
        List<LocalDate> candidates = lab.open().stream()
                .filter(day -> !day.isBefore(first) && !day.isAfter(last))
                .toList();
        Tried best = tried(asked, asked);
        if (candidates.isEmpty() || asked.isEmpty()) {
            return new Suggestion(best.waves(), best.forecast());
        }
        best = Math.pow(candidates.size(), asked.size()) <= ALL_COMBINATIONS
                ? everyCombination(asked, asked, 0, candidates, best)
                : oneAfterTheOther(asked, candidates, best);
        return new Suggestion(best.waves(), best.forecast());
    }

    private Tried everyCombination(
            List<DueWave> asked, List<DueWave> chosen, int section, List<LocalDate> candidates, Tried best) {
        if (section == asked.size()) {
            return better(tried(asked, chosen), best);
        }
        Tried found = best;
        for (LocalDate day : candidates) {
            found = everyCombination(asked, with(chosen, section, day), section + 1, candidates, found);
        }
        return found;
    }

    private Tried oneAfterTheOther(List<DueWave> asked, List<LocalDate> candidates, Tried start) {
        Tried best = start;
        boolean better = true;
        while (better) {
            Tried before = best;
            for (int section = 0; section < asked.size(); section++) {
                for (LocalDate day : candidates) {
                    best = better(tried(asked, with(best.waves(), section, day)), best);
                }
            }
            better = Tried.BETTER_FIRST.compare(best, before) < 0;
        }
        return best;
    }

    private static Tried better(Tried one, Tried best) {
        return Tried.BETTER_FIRST.compare(one, best) < 0 ? one : best;
    }

    private static List<DueWave> with(List<DueWave> waves, int section, LocalDate day) {
        List<DueWave> changed = new ArrayList<>(waves);
        changed.set(section, waves.get(section).dueOn(day));
        return changed;
    }

    private Tried tried(List<DueWave> asked, List<DueWave> waves) {
        long moved = 0;
        for (int section = 0; section < waves.size(); section++) {
            moved += Math.abs(ChronoUnit.DAYS.between(
                    asked.get(section).due(), waves.get(section).due()));
        }
        return new Tried(waves, Forecast.of(waves, arrival, lab, takenAlready), moved);
    }
}
