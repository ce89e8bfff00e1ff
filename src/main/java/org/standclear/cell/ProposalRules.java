package org.standclear.cell;

import java.util.List;
import java.util.Optional;
import org.standclear.cell.CellRegister.NewProposal;
import org.standclear.cell.CellRegister.Proposed;

/** What a proposal has to fulfil when it is made, and still when it is approved. */
final class ProposalRules {

    private ProposalRules() {}

    /** What is wrong with a new proposal, if anything. */
    static Optional<Proposed.Refused> refusal(
            NewProposal asked, CellFacts facts, Optional<Cell> cell, List<Cell> others) {
        if (asked.reason().isBlank()) {
            return refused("reason", "Say why the cell changes: what was measured, decided or fitted.");
        }
        if (asked.startOffsetMinutes() < 0 || asked.startOffsetMinutes() > 29) {
            return refused("startOffset", "Slots begin 0 to 29 minutes after the half hour.");
        }
        return cell.isPresent() ? nextVersion(facts, cell.get()) : newCell(facts, others);
    }

    private static Optional<Proposed.Refused> nextVersion(CellFacts facts, Cell cell) {
        if (!facts.name().equals(cell.name())) {
            return refused("file", "The file describes " + facts.name() + "; its name has to be " + cell.name() + ".");
        }
        int next = cell.currentVersion() + 1;
        return facts.version() == next
                ? Optional.empty()
                : refused(
                        "file",
                        "The file says version " + facts.version() + "; version " + cell.currentVersion()
                                + " is in force, so it has to be " + next + ".");
    }

    private static Optional<Proposed.Refused> newCell(CellFacts facts, List<Cell> others) {
        return taken(facts.name(), others)
                ? refused("file", "There is a cell named " + facts.name() + " already; propose on its own page.")
                : Optional.empty();
    }

    /** Why the proposal can no longer be approved as it was shown, if so. */
    static Optional<String> stale(CellProposal proposal, Optional<Cell> cell, int seenVersion, List<Cell> all) {
        int inForce = cell.map(Cell::currentVersion).orElse(0);
        if (!proposal.open()) {
            return Optional.of("This proposal is " + proposal.state().words() + " already.");
        }
        if (cell.isEmpty() && taken(proposal.cellName(), all)) {
            return Optional.of("Another cell named " + proposal.cellName() + " was approved meanwhile.");
        }
        boolean next = cell.isEmpty() || proposal.number() == inForce + 1;
        if (next && seenVersion == inForce) {
            return Optional.empty();
        }
        return Optional.of("Version " + inForce + " of " + proposal.cellName() + " came in force meanwhile.");
    }

    private static boolean taken(String name, List<Cell> cells) {
        return cells.stream().anyMatch(cell -> cell.name().equalsIgnoreCase(name));
    }

    private static Optional<Proposed.Refused> refused(String field, String says) {
        return Optional.of(new Proposed.Refused(field, says));
    }
}
