package org.standclear.core.forecast;

import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.TreeSet;

/**
 * What is wanted of each day, beside what the lab can give.
 *
 * @param days every day that is open or wanted, in order
 * @param withoutDay turns for which no open day was left before their due date
 */
public record Forecast(List<Day> days, double withoutDay) {

    public Forecast {
        days = List.copyOf(days);
    }

    /**
     * One day.
     *
     * @param asked turns that the sections' people want on it, as an expectation
     * @param taken turns that others have on it already
     * @param turns turns that the lab can give in all
     */
    public record Day(LocalDate date, double asked, double taken, int turns) {

        /** All turns that are wanted on it. */
        public double wanted() {
            return asked + taken;
        }

        /** Wanted over given: 1 is full. More than any number when the lab is closed and somebody wants it. */
        public double use() {
            return wanted() == 0 ? 0 : wanted() / turns;
        }

        /** Turns that the sections' people are given on the wanted day: what others have already is not given again. */
        double served() {
            return Math.min(asked, Math.max(0, turns - taken));
        }
    }

    /** What the sections want, on top of what is taken already. */
    public static Forecast of(List<DueWave> waves, Arrival arrival, LabDays lab, Map<LocalDate, Double> takenAlready) {
        Map<LocalDate, Double> asked = new TreeMap<>();
        double withoutDay = 0;
        for (DueWave wave : waves) {
            List<LocalDate> days = lab.openUpTo(wave.due(), arrival.leadDays());
            if (days.isEmpty()) {
                withoutDay += wave.turns();
                continue;
            }
            double[] shares = arrival.shares(days.size());
            for (int day = 0; day < shares.length; day++) {
                asked.merge(days.get(day), wave.turns() * shares[day], Double::sum);
            }
        }
        TreeSet<LocalDate> all = new TreeSet<>(lab.turns().keySet());
        all.addAll(asked.keySet());
        all.addAll(takenAlready.keySet());
        return new Forecast(
                all.stream()
                        .map(day -> new Day(
                                day, asked.getOrDefault(day, 0.0), takenAlready.getOrDefault(day, 0.0), lab.on(day)))
                        .toList(),
                withoutDay);
    }

    /** The day that is wanted most beside what it gives; the earliest of equals. Empty when nothing is wanted. */
    public Optional<Day> peak() {
        return days.stream()
                .filter(day -> day.wanted() > 0)
                .max(Comparator.comparingDouble(Day::use).thenComparing(Day::date, Comparator.reverseOrder()));
    }

    /** The peak day's use; 0 when nothing is wanted. */
    public double peakUse() {
        return peak().map(Day::use).orElse(0.0);
    }

    /**
     * Whether fewer turns are left without an open day, or as many and the peak is lower. In this order: turns without a
     * day are wanted nowhere, so they lower the peak, and a plan that gives them a day must not look worse for it.
     */
    public boolean presses(Forecast other) {
        return withoutDay < other.withoutDay || withoutDay == other.withoutDay && peakUse() < other.peakUse();
    }

    /**
     * The share of the sections' own turns that are not given on the day on which they are wanted, 0 to 1. Turns that others
     * have already count neither as wanted nor as served: they would make a rush look smaller than it is.
     */
    public double shareNotServed() {
        double asked = days.stream().mapToDouble(Day::asked).sum() + withoutDay;
        double served = days.stream().mapToDouble(Day::served).sum();
        return asked == 0 ? 0 : (asked - served) / asked;
    }
}
