package org.standclear.cell;

import java.time.Instant;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.LabId;
import org.standclear.platform.ids.PersonId;

/**
 * A cell file that waits for a second person, or the decision about it.
 *
 * @param cell null when the file describes a cell that does not exist yet
 * @param number the version the file names
 */
public record CellProposal(
        UUID id,
        LabId lab,
        @Nullable CellId cell,
        String cellName,
        int number,
        int startOffsetMinutes,
        String file,
        String sha256,
        String reason,
        PersonId proposedBy,
        Instant proposedAt,
        State state,
        @Nullable Decision decision) {

    /** Whether it still waits. */
    public boolean open() {
        return state == State.OPEN;
    }

    /** Who decided, when, and why. */
    public record Decision(PersonId by, Instant at, String reason) {}

    /** Where a proposal is. */
    public enum State {
        OPEN("waits for a second person"),
        APPROVED("approved"),
        REJECTED("not approved");

        private final String words;

        State(String words) {
            this.words = words;
        }

        /** The state as people say it. */
        public String words() {
            return words;
        }
    }
}
