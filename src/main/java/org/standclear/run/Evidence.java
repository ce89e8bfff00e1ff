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

    /** How the run came out; empty when there is none. */
    Optional<Outcome> outcome(RunId run);

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
            Outcome outcome,
            Link link) {}

    /**
     * How a run came out: what an instructor looks at before confirming.
     *
     * @param endedAt null until there is no more motion
     * @param odd what the close-out says of anything odd; null until it is asked
     * @param attendants printed names of who stood at the e-stop, first to last
     * @param fingerprint SHA-256 of the program file of the latest start
     */
    record Outcome(
            RunState state,
            @Nullable Instant endedAt,
            int passes,
            int stops,
            @Nullable String odd,
            List<String> attendants,
            String fingerprint) {

        public Outcome {
            attendants = List.copyOf(attendants);
        }

        /** "closed out, 5 passes, 1 stop, near miss". */
        public String words() {
            String counts = state.words() + ", " + passes + (passes == 1 ? " pass, " : " passes, ")
                    + (stops == 0 ? "no stop" : stops == 1 ? "1 stop" : stops + " stops");
            return odd == null ? counts : counts + (odd.equals("nothing") ? ", nothing odd" : ", " + odd);
        }

        /** "Mateo Ironbark, then Tal Emberley". */
        public String attendantNames() {
            return String.join(", then ", attendants);
        }
    }
}
