package org.standclear.program;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.ids.ProgramId;
import org.standclear.platform.ids.RevisionId;

/** Keeps programs: never run, never changed, never shown as anything but text. */
public interface Programs {

    /** The revision of that id. */
    Optional<Revision> find(RevisionId id);

    /** The revision, if the person may see it: the author, or lab staff. */
    Optional<Revision> findFor(PersonId person, RevisionId id);

    /** All revisions of a program, latest first. */
    List<Revision> revisions(ProgramId program);

    /** All revisions of a program, latest first, if the person may see them; else none. */
    List<Revision> revisionsFor(PersonId person, ProgramId program);

    /** The latest revision of each of the person's programs, most recently changed first. */
    List<Revision> latestOf(PersonId author);

    /** The next programs of a list that goes on and on, each by its latest revision, most recently changed first. */
    Page page(PageRequest request);

    /** The file's bytes as they were uploaded; a note in their place once they were taken out at the end of their time. */
    byte[] bytes(RevisionId id);

    /** Whether the bytes were taken out; such a revision is shown, and never checked again. */
    default boolean isTakenOut(RevisionId id) {
        return takenOutAt(id).isPresent();
    }

    /** When the bytes were taken out; empty while they are there. */
    Optional<Instant> takenOutAt(RevisionId id);

    /**
     * Which programs to list.
     *
     * @param author null for everybody's
     * @param after the last entry of the page before; null for the first page
     */
    record PageRequest(@Nullable PersonId author, @Nullable Position after, int size) {}

    /** A place in the list. */
    record Position(Instant changedAt, UUID program) {}

    /** A part of the list, and where the next part begins; null at its end. */
    record Page(List<Revision> revisions, @Nullable Position next) {

        public Page {
            revisions = List.copyOf(revisions);
        }
    }
}
