package org.standclear.cell;

import java.time.Instant;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.PersonId;

/**
 * A tag that hangs or hung on a cell.
 *
 * @param causedBy whose run made the tag necessary; null when nobody's or not known
 * @param lifted null while it hangs
 */
public record CellTag(
        UUID id,
        CellId cell,
        Kind kind,
        String reason,
        PersonId placedBy,
        Instant placedAt,
        @Nullable PersonId causedBy,
        @Nullable Lifted lifted) {

    /** Whether it still hangs. */
    public boolean hangs() {
        return lifted == null;
    }

    /** Who took it off, and why. */
    public record Lifted(PersonId by, Instant at, String reason) {}

    /** What a tag does to the cell; of several tags the last one here that hangs decides. */
    public enum Kind {
        RESTRICTION("restriction", CellState.RESTRICTED),
        TEST("test tag", CellState.UNDER_TEST),
        HOLD("hold", CellState.HELD),
        OUT_OF_SERVICE("out-of-service tag", CellState.OUT_OF_SERVICE),
        /** Kept apart from tags: a lock at the isolated energy, taken off by the person who put it on. */
        LOCKOUT("lockout", CellState.LOCKED_OUT);

        private final String words;
        private final CellState state;

        Kind(String words, CellState state) {
            this.words = words;
            this.state = state;
        }

        /** The tag as people say it. */
        public String words() {
            return words;
        }

        /** The state of a cell with this tag and none that weighs more. */
        public CellState state() {
            return state;
        }

        /** Whether a return to service takes it off; a lockout comes off by itself. */
        public boolean comesOffAtReturn() {
            return stops() && this != LOCKOUT;
        }

        /** Whether the cell may not run while it hangs. */
        public boolean stops() {
            return !state.mayRun();
        }
    }
}
