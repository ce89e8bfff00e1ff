package org.standclear.demo;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.standclear.booking.OpenPeriod;

/** Joins opening hours. */
final class Openings {

    private Openings() {}

    /** The periods with one more; those that touch or overlap become one. */
    static List<OpenPeriod> with(List<OpenPeriod> periods, OpenPeriod more) {
        List<OpenPeriod> all = new ArrayList<>(periods);
        all.add(more);
        all.sort(Comparator.comparing(OpenPeriod::opens));
        List<OpenPeriod> joined = new ArrayList<>();
        for (OpenPeriod next : all) {
            OpenPeriod last = joined.isEmpty() ? null : joined.get(joined.size() - 1);
            if (last == null || last.closes().isBefore(next.opens())) {
                joined.add(next);
            } else if (next.closes().isAfter(last.closes())) {
                joined.set(joined.size() - 1, new OpenPeriod(last.opens(), next.closes()));
            }
        }
        return joined;
    }
}
