package org.standclear.core.forecast;

import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

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
     * @param wanted turns that people want on it, as an expectation
     * @param turns turns that the lab can give
     */
    public record Day(LocalDate date, double wanted, int turns) {

        /** Wanted over given: 1 is full. More than any number when the lab is closed and somebody wants it. */
        public double use() {
            return wanted == 0 ? 0 : wanted / turns;
        }

        /** Turns that are given on the wanted day. */
        double served() {
            return Math.min(wanted, turns);
        }
    }

    /** What the sections want, on top of what is taken already. */
    public static Forecast of(List<DueWave> waves, Arrival arrival, LabDays lab, Map<LocalDate, Double> takenAlready) {
        Map<LocalDate, Double> wanted = new TreeMap<>(takenAlready);
        double withoutDay = 0;
        for (DueWave wave : waves) {
            List<LocalDate> days = lab.openUpTo(wave.due(), arrival.leadDays());
            if (days.isEmpty()) {
                withoutDay += wave.turns();
                continue;
            }
            double[] shares = arrival.shares(days.size());
            for (int day = 0; day < shares.length; day++) {
                wanted.merge(days.get(day), wave.turns() * shares[day], Double::sum);
            }
        }
        TreeMap<LocalDate, Integer> all = new TreeMap<>(lab.turns());
        wanted.keySet().forEach(day -> all.putIfAbsent(day, 0));
        return new Forecast(
                all.entrySet().stream()
                        .map(entry ->
                                new Day(entry.getKey(), wanted.getOrDefault(entry.getKey(), 0.0), entry.getValue()))
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

    /** The share of all wanted turns that are not given on the day on which they are wanted, 0 to 1. */
    public double shareNotServed() {
        double wanted = days.stream().mapToDouble(Day::wanted).sum() + withoutDay;
        double served = days.stream().mapToDouble(Day::served).sum();
        return wanted == 0 ? 0 : (wanted - served) / wanted;
    }
}
