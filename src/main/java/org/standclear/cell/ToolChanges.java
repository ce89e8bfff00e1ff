package org.standclear.cell;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.PersonId;

/**
 * Fits a registered tool: while it goes on nothing is released, two people read the offset at the robot without seeing
 * each other's, and when both read what is registered the cell gets its next version, proposed by one and approved by the
 * other.
 */
public interface ToolChanges {

    /** The change that goes on at the cell. */
    Optional<Change> open(CellId cell);

    /** Begins one; the caller has checked that the person is staff. */
    Outcome begin(CellId cell, UUID tool, PersonId by);

    /**
     * One person's reading at the robot. Two people have to read alike, of whom one at least is lab staff on duty and
     * authorised on the cell.
     *
     * @param toolCode as it stands on the tool, typed
     */
    Outcome read(CellId cell, String toolCode, List<Double> offsetMm, PersonId by);

    /** The tool that was fitted before is fitted again. */
    Outcome giveUp(CellId cell, PersonId by);

    /**
     * A change.
     *
     * @param readers who has read so far; not what
     */
    record Change(UUID id, Equipment.Item tool, PersonId begunBy, Instant begunAt, List<PersonId> readers) {

        public Change {
            readers = List.copyOf(readers);
        }
    }

    /** What came of an act. */
    sealed interface Outcome {

        /** It goes on. */
        record Going() implements Outcome {}

        /** The cell is at this version now; programs are checked anew by themselves. */
        record Done(int version) implements Outcome {}

        /** It does not fit; says why, no value of another's reading among it. */
        record Refused(String says) implements Outcome {}
    }
}
