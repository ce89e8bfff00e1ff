package org.standclear.platform.retention;

import java.time.Instant;
import java.util.Set;
import java.util.UUID;

/**
 * A record that could be disposed of.
 *
 * @param clockStart when its clock started
 * @param concerns whom and what it is about
 * @param keptBack why its own room has to keep it for now; empty when it has not
 * @param said which one it is, by what people know: an account, an incident's number, a cell
 */
public record Candidate(UUID id, Instant clockStart, Set<Concern> concerns, String keptBack, String said) {

    public Candidate {
        concerns = Set.copyOf(concerns);
    }

    /** Whether it is about that. */
    public boolean concerns(Concern.About about, UUID what) {
        return concerns.contains(new Concern(about, what));
    }
}
