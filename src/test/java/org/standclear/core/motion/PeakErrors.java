package org.standclear.core.motion;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;

/** By which part the peaks of many moves miss their reference, by arm and by what is fastest. */
final class PeakErrors {

    /** Speeds below this count as this, mm/s or deg/s: what hardly moves has no part to miss. */
    private static final double STILL = 1e-2;

    private final Map<String, List<Double>> parts = new TreeMap<>();
    private final List<String> over = new ArrayList<>();
    private double worst;
    private String where = "";

    void compare(String what, String move, double found, double reference) {
        double part = (found - reference) / Math.max(STILL, reference);
        parts.computeIfAbsent(what, any -> new ArrayList<>()).add(part);
        if (!(Math.abs(part) <= RandomMove.PRECISE)) {
            over.add(what + " of " + move + ": found " + found + ", reference " + reference);
        }
        if (!(Math.abs(part) <= Math.abs(worst))) {
            worst = part;
            where = what + " of " + move + ": found " + found + ", reference " + reference;
        }
    }

    /** The worst part of all, without its sign. */
    double worst() {
        return Math.abs(worst);
    }

    /** Those that miss it by more than they may. */
    List<String> over() {
        return over;
    }

    String where() {
        return where;
    }

    /** A line for each: how many, and the parts that half, 99 %, 99.9 % and all stay within; the lowest, the highest. */
    String table() {
        StringBuilder table = new StringBuilder();
        parts.forEach((what, all) -> {
            List<Double> sizes = new ArrayList<>(all.stream().map(Math::abs).toList());
            Collections.sort(sizes);
            table.append(String.format(
                    Locale.ROOT,
                    "%-34s n %6d  median %.1e  99%% %.1e  99.9%% %.1e  worst %.1e  (%+.1e to %+.1e)%n",
                    what,
                    sizes.size(),
                    quantile(sizes, 0.5),
                    quantile(sizes, 0.99),
                    quantile(sizes, 0.999),
                    quantile(sizes, 1),
                    Collections.min(all),
                    Collections.max(all)));
        });
        return table.toString();
    }

    private static double quantile(List<Double> sorted, double part) {
        return sorted.get((int) Math.ceil(part * sorted.size()) - 1);
    }
}
