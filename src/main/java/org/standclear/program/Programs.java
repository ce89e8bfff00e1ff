package org.standclear.program;

import java.util.List;
import java.util.Optional;
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

    /** The latest revision of each of the person's programs, most recently changed first. */
    List<Revision> latestOf(PersonId author);

    /** The file's bytes as they were uploaded. */
    byte[] bytes(RevisionId id);
}
