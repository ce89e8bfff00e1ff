package org.standclear.cell;

import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.PersonId;

/** Changes of a cell's state. Anyone may stop a cell; only staff put it back. */
public interface CellStates {

    /** Hangs an out-of-service tag on the cell, or adds to the reasons of one that hangs there. */
    void tagOut(CellId cell, PersonId by, String reason);

    /** Puts a hold on the cell, for example after a second protective stop. */
    void hold(CellId cell, PersonId by, String reason);

    /** Hangs a hold or an out-of-service tag on the cell. */
    void stop(StopCell order);

    /**
     * Takes every hold and out-of-service tag off; the caller has checked that the person is staff. A restriction
     * stays.
     */
    Return returnToService(CellId cell, PersonId by, String reason);

    /**
     * Keeps that somebody has isolated the cell's energy and hung an own lock; the caller has checked that the person is
     * staff. Nobody else takes it off.
     */
    void lockOut(CellId cell, PersonId by, String what);

    /**
     * Takes the person's own lockout off. An instructor may take off another's, with the reason why the owner cannot; the
     * caller says whether this person is one.
     */
    Return removeLockout(CellId cell, UUID lockout, PersonId by, boolean instructor, String reason);

    /** Lets only staff attend the e-stop; the caller has checked that the person may. */
    void restrict(CellId cell, PersonId by, String reason);

    /** Takes the restriction off; the caller has checked that the person may. */
    void unrestrict(CellId cell, PersonId by, String reason);

    /** All tags that hang or hung on the cell, latest first. */
    List<CellTag> tags(CellId cell);

    /**
     * Stops a cell.
     *
     * @param kind a hold, a test tag or an out-of-service tag
     * @param causedBy whose run made it necessary; that person may not put the cell back
     */
    record StopCell(
            CellId cell,
            CellTag.Kind kind,
            PersonId by,
            String reason,
            @Nullable PersonId causedBy) {

        public StopCell {
            if (!kind.comesOffAtReturn() || reason.isBlank()) {
                throw new IllegalArgumentException("a cell is stopped by a hold or a tag, with a reason");
            }
        }
    }

    /** What came of asking for a return to service. */
    sealed interface Return {

        /** The cell runs again, in this state. */
        record Returned(CellState state) implements Return {}

        /** It stays stopped; says why, and what has to happen first. */
        record Refused(String says) implements Return {}
    }
}
