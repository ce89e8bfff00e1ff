package org.standclear.people;

import java.time.Instant;
import org.standclear.platform.ids.AssignmentId;
import org.standclear.platform.ids.CourseId;
import org.standclear.platform.ids.SectionId;

/** What a section has to hand in: an assignment with the section's own due date. */
public record Assignment(
        AssignmentId id, CourseId course, SectionId section, String title, int minimumRuns, Instant due) {}
