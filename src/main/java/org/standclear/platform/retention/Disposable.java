package org.standclear.platform.retention;

import java.util.List;
import java.util.Optional;
import java.util.UUID;

/** A kind of record as its own room disposes of it; nobody else writes the room's tables. */
public interface Disposable {

    /** Which kind. */
    RecordKind kind();

    /** Records whose clocks started within the stretch and that are still whole, earliest first. */
    List<Candidate> startedIn(Stretch stretch);

    /** The record as it is now; empty when there is nothing of it to dispose of. */
    Optional<Candidate> find(UUID id);

    /** Disposes of it in the running transaction; false when there was nothing to dispose of any more. */
    boolean dispose(UUID id);
}
