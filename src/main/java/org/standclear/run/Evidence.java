package org.standclear.run;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.standclear.people.Criteria.Criterion;
import org.standclear.platform.ids.CourseId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.ids.RunId;

/** Runs as evidence for what an assignment is to show: people link a run to a criterion, an instructor confirms it. */
public interface Evidence {

    /** What the run is linked to, in the order of the criteria. */
    List<Link> of(RunId run);

    /** Criteria of the run's assignment that it can still be linked to. */
    List<Criterion> open(RunId run);

    /** Everything linked to runs of the course's assignments, by student and criterion. */
    List<Graded> ofCourse(CourseId course);

    /** Links it; says why not, or nothing. The caller has checked that the person had a part in it or is lab staff. */
    Optional<String> link(RunId run, UUID criterion, PersonId by);

    /** Takes an unconfirmed link away; says why not, or nothing. */
    Optional<String> unlink(RunId run, UUID criterion, PersonId by);

    /** An instructor has looked at it and confirms; says why not, or nothing. */
    Optional<String> confirm(RunId run, UUID criterion, PersonId by);

    /** The confirmation is taken back; false when there was none. */
    boolean takeBack(RunId run, UUID criterion, PersonId by);

    /**
     * That a run is evidence for a criterion.
     *
     * @param confirmedBy null until an instructor confirmed it
     */
    record Link(
            RunId run,
            Criterion criterion,
            PersonId linkedBy,
            Instant linkedAt,
            @Nullable PersonId confirmedBy,
            @Nullable Instant confirmedAt) {}

    /** A link with its student, for lists of grades. */
    record Graded(
            String section,
            String login,
            String name,
            String assignment,
            String cell,
            Instant startedAt,
            @Nullable Instant closedOutAt,
            Link link) {}
}
