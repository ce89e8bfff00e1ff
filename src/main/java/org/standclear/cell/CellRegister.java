package org.standclear.cell;

import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.PersonId;

/** New versions of cells: one person proposes with a reason, another approves. */
public interface CellRegister {

    /** Reads the file and keeps it as a proposal. */
    Proposed propose(NewProposal proposal);

    /**
     * Makes the proposal the version in force, under the cell's row lock. The caller has checked that the person may
     * approve; the register refuses the person who proposed.
     *
     * @param seenVersion the version in force that the approver compared with; 0 for a new cell
     */
    Decided approve(UUID proposal, PersonId by, int seenVersion);

    /** Puts the proposal aside; whoever proposed may do so too. */
    Decided reject(UUID proposal, PersonId by, String reason);

    /** The proposal of that id. */
    Optional<CellProposal> find(UUID proposal);

    /** Proposals that wait, oldest first; those for new cells too. */
    List<CellProposal> waiting();

    /** All proposals for a cell, latest first. */
    List<CellProposal> proposals(CellId cell);

    /** What a version's file says. */
    CellFacts facts(CellVersion version);

    /** What a proposal's file says. */
    CellFacts facts(CellProposal proposal);

    /**
     * A file somebody wants in force.
     *
     * @param cell null for a new cell
     * @param startOffsetMinutes for a new cell, how far after the half hour its slots begin; otherwise not looked at
     */
    record NewProposal(@Nullable CellId cell, String file, String reason, PersonId by, int startOffsetMinutes) {}

    /** What came of proposing. */
    sealed interface Proposed {

        /** It is kept and waits for a second person. */
        record Kept(CellProposal proposal) implements Proposed {}

        /** Nothing was kept; says what is wrong, and with which field: {@code file}, {@code reason}, ... */
        record Refused(String field, String says) implements Proposed {}
    }

    /** What came of a decision. */
    sealed interface Decided {

        /** It is done; for an approval this is the version in force now. */
        record Done(CellId cell, int number) implements Decided {}

        /** Put aside. */
        record PutAside(@Nullable CellId cell) implements Decided {}

        /** It may not be decided by this person, or says what else is the matter. */
        record Refused(String says) implements Decided {}

        /** Somebody decided, or another version came in force, since the page was shown. */
        record Stale(String says, CellProposal proposal, int inForce) implements Decided {}
    }
}
