package org.standclear.booking.fairness;

import java.util.List;

/**
 * How evenly a section's people had slots; everybody enrolled counts, also who had none.
 *
 * @param people enrolled
 * @param slots of all together
 * @param least slots that somebody had
 * @param median half had no more
 * @param most slots that somebody had
 */
public record SectionUse(String section, int people, int slots, int least, double median, int most, int unmet) {

    /** Over the slots of each person. */
    static SectionUse of(String section, List<Integer> slotsEach, int unmet) {
        List<Integer> sorted = slotsEach.stream().sorted().toList();
        int people = sorted.size();
        double median = people == 0 ? 0 : (sorted.get((people - 1) / 2) + sorted.get(people / 2)) / 2.0;
        return new SectionUse(
                section,
                people,
                sorted.stream().mapToInt(Integer::intValue).sum(),
                people == 0 ? 0 : sorted.get(0),
                median,
                people == 0 ? 0 : sorted.get(people - 1),
                unmet);
    }
}
