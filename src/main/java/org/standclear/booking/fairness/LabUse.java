package org.standclear.booking.fairness;

import java.util.List;

/**
 * The lab's use in a stretch of days.
 *
 * @param held slots that somebody held, or held to the end
 * @param given slots of cells that run now, closures taken off
 */
public record LabUse(int held, int given, List<SectionUse> sections, List<PersonUse> people) {

    public LabUse {
        sections = List.copyOf(sections);
        people = List.copyOf(people);
    }

    /** Held over given, 0 to 1; 0 when nothing is given. */
    public double share() {
        return given == 0 ? 0 : Math.min(1, (double) held / given);
    }
}
