package org.standclear.cell.web;

import jakarta.servlet.http.HttpServletResponse;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.standclear.cell.CellFacts;
import org.standclear.cell.CellProposal;
import org.standclear.cell.CellRegister;
import org.standclear.cell.CellRegister.Decided;
import org.standclear.cell.CellVersion;
import org.standclear.cell.Cells;
import org.standclear.platform.forms.PostOnce;
import org.standclear.platform.security.SignedInPerson;
import org.standclear.platform.web.NotFoundException;
import org.standclear.platform.web.StaleFormException;

/** A second person reads what a proposal would change, and decides. */
@Controller
class ProposalPages {

    private final Cells cells;
    private final CellRegister register;
    private final PostOnce postOnce;

    ProposalPages(Cells cells, CellRegister register, PostOnce postOnce) {
        this.cells = cells;
        this.register = register;
        this.postOnce = postOnce;
    }

    @GetMapping("/cells/proposals/{proposal}")
    String show(@PathVariable UUID proposal, @AuthenticationPrincipal SignedInPerson me, Model model) {
        return page(found(proposal), new FormErrors(), me, model);
    }

    @PostMapping("/cells/proposals/{proposal}/approve")
    String approve(
            @PathVariable UUID proposal,
            @ModelAttribute DecisionForm form,
            @AuthenticationPrincipal SignedInPerson me,
            HttpServletResponse response,
            Model model) {
        int seen = form.seenVersion() == null ? -1 : form.seenVersion();
        return decide(found(proposal), form, () -> register.approve(proposal, me.id(), seen), me, response, model);
    }

    @PostMapping("/cells/proposals/{proposal}/reject")
    String reject(
            @PathVariable UUID proposal,
            @ModelAttribute DecisionForm form,
            @AuthenticationPrincipal SignedInPerson me,
            HttpServletResponse response,
            Model model) {
        CellProposal found = found(proposal);
        FormErrors errors = new FormErrors();
        String reason = TextField.read(errors, "reason", form.reason(), 1000, "Say why, for the person who proposed.");
        if (errors.any()) {
            response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
            return page(found, errors, me, model);
        }
        return decide(found, form, () -> register.reject(proposal, me.id(), reason), me, response, model);
    }

    private String decide(
            CellProposal proposal,
            DecisionForm form,
            Supplier<Decided> act,
            SignedInPerson me,
            HttpServletResponse response,
            Model model) {
        AtomicReference<@Nullable Decided> refusal = new AtomicReference<>();
        Optional<String> next = postOnce.run(form.formToken(), () -> {
            Decided decided = act.get();
            if (decided instanceof Decided.Done done) {
                return "/cells/" + done.cell();
            }
            if (decided instanceof Decided.PutAside aside) {
                return aside.cell() == null ? "/cells" : "/cells/" + aside.cell();
            }
            refusal.set(decided);
            return null;
        });
        if (next.isPresent()) {
            return "redirect:" + next.get();
        }
        Decided decided = refusal.get();
        if (decided instanceof Decided.Stale stale) {
            throw conflict(stale);
        }
        FormErrors errors = new FormErrors();
        errors.add("", decided instanceof Decided.Refused refused ? refused.says() : "Nothing was decided.");
        response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
        return page(proposal, errors, me, model);
    }

    private StaleFormException conflict(Decided.Stale stale) {
        CellProposal proposal = stale.proposal();
        Map<String, String> yours = new LinkedHashMap<>();
        Map<String, String> current = new LinkedHashMap<>();
        yours.put("version", String.valueOf(proposal.number()));
        current.put("version", stale.inForce() == 0 ? "none" : String.valueOf(stale.inForce()));
        current.put("what happened", stale.says());
        inForce(proposal).ifPresent(version -> {
            current.put("reason", version.reason());
            for (CellFacts.Change change : register.facts(proposal).since(register.facts(version))) {
                yours.put(change.label(), change.now() == null ? "none" : change.now());
                current.put(change.label(), change.was() == null ? "none" : change.was());
            }
        });
        yours.put("reason", proposal.reason());
        return new StaleFormException(
                "the description of " + proposal.cellName(), "/cells/proposals/" + proposal.id(), yours, current);
    }

    private String page(CellProposal proposal, FormErrors errors, SignedInPerson me, Model model) {
        CellFacts facts = register.facts(proposal);
        Optional<CellVersion> inForce = inForce(proposal);
        List<CellFacts.Change> changes = new ArrayList<>();
        inForce.map(register::facts).map(facts::since).ifPresent(changes::addAll);
        model.addAttribute("proposal", proposal);
        model.addAttribute("facts", facts);
        model.addAttribute("inForce", inForce.orElse(null));
        model.addAttribute("seenVersion", inForce.map(CellVersion::number).orElse(0));
        model.addAttribute("changes", changes);
        model.addAttribute("mine", proposal.proposedBy().equals(me.id()));
        model.addAttribute("errors", errors.all());
        return "cell/proposal";
    }

    private Optional<CellVersion> inForce(CellProposal proposal) {
        return proposal.cell() == null ? Optional.empty() : Optional.of(cells.current(proposal.cell()));
    }

    private CellProposal found(UUID id) {
        return register.find(id).orElseThrow(() -> new NotFoundException("proposal"));
    }

    /** A decision as it was sent. */
    record DecisionForm(
            @Nullable String formToken,
            @Nullable Integer seenVersion,
            @Nullable String reason) {}
}
