package org.standclear.people;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.jspecify.annotations.Nullable;
import org.standclear.platform.ids.CourseId;
import org.standclear.platform.ids.PersonId;

/** How long a person's slots are at least, by course or accommodation; the answer does not say which. */
public interface SlotLengths {

    /** For a run of that course, or of none, in minutes; 0 when the lab's own length will do. */
    int minutesFor(PersonId operator, @Nullable CourseId course);

    /** The longest of all the person may need, whatever the run is for; 0 when the lab's own length will do. */
    int longestFor(PersonId operator);

    /** What the course asks for; empty for the lab's own length. */
    OptionalInt ofCourse(CourseId course);

    /**
     * Sets it; null for the lab's own length. Says what is wrong with it, or nothing. The caller has checked that the
     * person may.
     */
    Optional<String> setForCourse(CourseId course, @Nullable Integer minutes, String reason, PersonId by);

    /** How it changed, latest first. */
    List<LengthChange> changesOf(CourseId course);

    /** A length that somebody set; null minutes for the lab's own. */
    record LengthChange(@Nullable Integer minutes, String reason, PersonId by, Instant at) {}
}
