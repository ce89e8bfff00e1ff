package org.standclear.incident;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.standclear.platform.ids.IncidentId;

/** The evidence of a run as it stood when an incident of class 2 or above was reported, each piece named by its hash. */
public interface FrozenEvidence {

    /** What was frozen, recomputed from what the lab has now; empty when nothing was frozen. */
    Optional<Recomputed> of(IncidentId incident);

    /**
     * One piece.
     *
     * @param reference the id or number under which it is found
     * @param sha256 of its content when it was frozen
     * @param holds whether it has the same hash now
     */
    record Piece(int number, String kind, String reference, String words, String sha256, boolean holds) {}

    /**
     * What was frozen.
     *
     * @param sha256 over all pieces
     * @param listHolds whether the list of pieces is the one that was frozen
     */
    record Recomputed(Instant frozenAt, String because, String sha256, boolean listHolds, List<Piece> pieces) {

        public Recomputed {
            pieces = List.copyOf(pieces);
        }

        /** Whether every piece is as it was. */
        public boolean holds() {
            return listHolds && pieces.stream().allMatch(Piece::holds);
        }
    }
}
