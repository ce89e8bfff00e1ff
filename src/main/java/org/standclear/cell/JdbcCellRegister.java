package org.standclear.cell;

import java.time.Clock;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.standclear.platform.digest.Sha256;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.Id;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.lab.Labs;
import org.standclear.platform.live.LiveEvents;
import org.standclear.platform.time.SqlTime;
import org.standclear.trail.Trail;
import org.standclear.trail.TrailEntry;

/** Keeps proposals, and puts approved ones in force in one transaction under the cell's row lock. */
@Service
class JdbcCellRegister implements CellRegister {

    private final CellProposalRows proposals;
    private final CellVersionRows versions;
    private final Cells cells;
    private final CellFiles files;
    private final DutyDefaults defaults;
    private final Labs labs;
    private final LiveEvents live;
    private final Trail trail;
    private final Clock clock;

    JdbcCellRegister(
            CellProposalRows proposals,
            CellVersionRows versions,
            Cells cells,
            CellFiles files,
            DutyDefaults defaults,
            Labs labs,
            LiveEvents live,
            Trail trail,
            Clock clock) {
        this.proposals = proposals;
        this.versions = versions;
        this.cells = cells;
        this.files = files;
        this.defaults = defaults;
        this.labs = labs;
        this.live = live;
        this.trail = trail;
        this.clock = clock;
    }

    @Override
    @Transactional
    public Proposed propose(NewProposal asked) {
        CellFiles.CellReading reading = files.read(asked.file());
        if (reading instanceof CellFiles.CellReading.Readable readable) {
            return keep(asked, readable.facts());
        }
        return new Proposed.Refused("file", ((CellFiles.CellReading.Unreadable) reading).says());
    }

    private Proposed keep(NewProposal asked, CellFacts facts) {
        Optional<Cell> cell = Optional.ofNullable(asked.cell()).flatMap(cells::find);
        Optional<Proposed.Refused> refused = ProposalRules.refusal(asked, facts, cell, cells.all());
        if (refused.isPresent()) {
            return refused.get();
        }
        CellProposal proposal = new CellProposal(
                Id.newValue(),
                labs.theLab().id(),
                asked.cell(),
                facts.name(),
                facts.version(),
                cell.map(Cell::startOffsetMinutes).orElse(asked.startOffsetMinutes()),
                asked.file(),
                Sha256.of(asked.file()),
                asked.reason(),
                asked.by(),
                now(),
                CellProposal.State.OPEN,
                null);
        proposals.add(proposal);
        append("cell.proposed", proposal, asked.by(), "was proposed: " + proposal.reason());
        return new Proposed.Kept(proposal);
    }

    @Override
    @Transactional
    public Decided approve(UUID id, PersonId by, int seenVersion) {
        CellProposal proposal = proposals.lock(id).orElseThrow(() -> new IllegalArgumentException("no proposal " + id));
        if (proposal.proposedBy().equals(by)) {
            return new Decided.Refused("You proposed this version, so another person approves it.");
        }
        Optional<Cell> cell = Optional.ofNullable(proposal.cell()).map(cells::lock);
        int inForce = cell.map(Cell::currentVersion).orElse(0);
        if (proposal.cell() == null) {
            // one new cell after the other chooses its name
            labs.lock(proposal.lab());
        }
        Optional<String> stale = ProposalRules.stale(proposal, cell, seenVersion, cells.all());
        if (stale.isPresent()) {
            return new Decided.Stale(stale.get(), proposal, inForce);
        }
        return putInForce(proposal, by, inForce);
    }

    private Decided putInForce(CellProposal proposal, PersonId by, int inForce) {
        CellVersionRows.Approval approval = new CellVersionRows.Approval(
                proposal, files.known(proposal.file()).fittedTool(), by, now());
        CellId cell = proposal.cell() == null ? begun(approval) : versions.addTo(proposal.cell(), approval);
        var decision = new CellProposal.Decision(by, approval.at(), "");
        proposals.decide(proposal.id(), CellProposal.State.APPROVED, decision, cell);
        live.cellChanged(cell);
        trail.append(entry("cell.version-approved", proposal, by, "came in force: " + proposal.reason())
                .with("cell", cell)
                .with("proposed-by", proposal.proposedBy())
                .with("replaces", inForce));
        return new Decided.Done(cell, proposal.number());
    }

    private CellId begun(CellVersionRows.Approval approval) {
        CellId cell = versions.addCell(approval);
        defaults.begin(cell, approval.by());
        return cell;
    }

    @Override
    @Transactional
    public Decided reject(UUID id, PersonId by, String reason) {
        CellProposal proposal = proposals.lock(id).orElseThrow(() -> new IllegalArgumentException("no proposal " + id));
        if (!proposal.open()) {
            int inForce = Optional.ofNullable(proposal.cell())
                    .flatMap(cells::find)
                    .map(Cell::currentVersion)
                    .orElse(0);
            return new Decided.Stale("This proposal is " + proposal.state().words() + " already.", proposal, inForce);
        }
        proposals.decide(id, CellProposal.State.REJECTED, new CellProposal.Decision(by, now(), reason));
        append("cell.proposal-rejected", proposal, by, "was not approved: " + reason);
        return new Decided.PutAside(proposal.cell());
    }

    @Override
    public Optional<CellProposal> find(UUID proposal) {
        return proposals.find(proposal);
    }

    @Override
    public List<CellProposal> waiting() {
        return proposals.waiting(labs.theLab().id());
    }

    @Override
    public List<CellProposal> proposals(CellId cell) {
        return proposals.of(cell);
    }

    @Override
    public CellFacts facts(CellVersion version) {
        return files.factsOf(version);
    }

    @Override
    public CellFacts facts(CellProposal proposal) {
        return files.known(proposal.file());
    }

    private void append(String kind, CellProposal proposal, PersonId by, String happened) {
        trail.append(entry(kind, proposal, by, happened));
    }

    private static TrailEntry entry(String kind, CellProposal proposal, PersonId by, String happened) {
        String words = proposal.cellName() + " version " + proposal.number() + " " + happened;
        return TrailEntry.of(proposal.lab(), kind, proposal.cell() == null ? proposal.id() : proposal.cell(), by, words)
                .with("proposal", proposal.id())
                .with("version", proposal.number())
                .with("sha256", proposal.sha256());
    }

    private Instant now() {
        return SqlTime.stored(clock.instant());
    }
}
