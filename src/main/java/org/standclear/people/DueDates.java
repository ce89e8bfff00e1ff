package org.standclear.people;

import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.standclear.platform.ids.AssignmentId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.ids.SectionId;

/** When each section's assignments are due, and moving that. */
public interface DueDates {

    /** Assignments that any section has to hand in at the instant or later, with all their sections; by course and title. */
    List<DueAssignment> dueFrom(Instant instant);

    /** The assignment of that id. */
    Optional<DueAssignment> find(AssignmentId id);

    /**
     * Puts other due dates in force for the sections named, with why; says why not when a section does not have the
     * assignment or somebody changed a date since. The caller has checked that the person may.
     */
    Optional<String> move(
            AssignmentId id, Map<SectionId, Instant> seen, Map<SectionId, Instant> due, String reason, PersonId by);

    /**
     * An assignment with its sections.
     *
     * @param course code of the course
     */
    record DueAssignment(AssignmentId id, String course, String title, int minimumRuns, List<DueSection> sections) {

        public DueAssignment {
            sections = List.copyOf(sections);
        }

        /** The due dates by section. */
        public Map<SectionId, Instant> due() {
            return sections.stream().collect(java.util.stream.Collectors.toMap(DueSection::id, DueSection::due));
        }
    }

    /** A section, how many take it, and when it has to hand in. */
    record DueSection(SectionId id, String code, int students, Instant due) {}
}
