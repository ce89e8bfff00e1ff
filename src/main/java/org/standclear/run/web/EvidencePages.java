package org.standclear.run.web;

import jakarta.servlet.http.HttpServletResponse;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.standclear.people.People;
import org.standclear.platform.forms.PostOnce;
import org.standclear.platform.ids.Id;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.ids.RunId;
import org.standclear.platform.security.Role;
import org.standclear.platform.security.SignedInPerson;
import org.standclear.platform.time.LabTime;
import org.standclear.platform.web.NotFoundException;
import org.standclear.run.Evidence;
import org.standclear.run.Run;
import org.standclear.run.Runs;

/** What a run is evidence for: linked by the people who ran it or by lab staff, confirmed by an instructor. */
@Controller
class EvidencePages {

    private static final String PATH = "/runs/{run}/evidence";

    private final Evidence evidence;
    private final Runs runs;
    private final RunStory story;
    private final People people;
    private final LabTime labTime;
    private final PostOnce once;

    EvidencePages(Evidence evidence, Runs runs, RunStory story, People people, LabTime labTime, PostOnce once) {
        this.evidence = evidence;
        this.runs = runs;
        this.story = story;
        this.people = people;
        this.labTime = labTime;
        this.once = once;
    }

    /** One link on the page. */
    record Line(String id, String words, String linked, boolean confirmed, String confirmedWords) {}

    @GetMapping(PATH)
    String show(@PathVariable RunId run, @AuthenticationPrincipal SignedInPerson me, Model model) {
        return page(visible(run, me), me, Map.of(), model);
    }

    @PostMapping(PATH)
    String link(
            @PathVariable RunId run,
            @RequestParam(required = false) @Nullable String formToken,
            @RequestParam(defaultValue = "") String criterion,
            @AuthenticationPrincipal SignedInPerson me,
            HttpServletResponse response,
            Model model) {
        Run found = links(run, me);
        return act(found, formToken, () -> evidence.link(run, id(criterion), me.id()), me, response, model);
    }

    @PostMapping(PATH + "/{criterion}/remove")
    String unlink(
            @PathVariable RunId run,
            @PathVariable UUID criterion,
            @RequestParam(required = false) @Nullable String formToken,
            @AuthenticationPrincipal SignedInPerson me,
            HttpServletResponse response,
            Model model) {
        Run found = links(run, me);
        return act(found, formToken, () -> evidence.unlink(run, criterion, me.id()), me, response, model);
    }

    @PostMapping(PATH + "/{criterion}/confirm")
    String confirm(
            @PathVariable RunId run,
            @PathVariable UUID criterion,
            @RequestParam(required = false) @Nullable String formToken,
            @AuthenticationPrincipal SignedInPerson me,
            HttpServletResponse response,
            Model model) {
        Run found = visible(run, me);
        return act(found, formToken, () -> evidence.confirm(run, criterion, me.id()), me, response, model);
    }

    @PostMapping(PATH + "/{criterion}/take-back")
    String takeBack(
            @PathVariable RunId run,
            @PathVariable UUID criterion,
            @RequestParam(required = false) @Nullable String formToken,
            @AuthenticationPrincipal SignedInPerson me,
            HttpServletResponse response,
            Model model) {
        Run found = visible(run, me);
        return act(
                found,
                formToken,
                () -> evidence.takeBack(run, criterion, me.id())
                        ? Optional.empty()
                        : Optional.of("It is not confirmed any more; nothing was changed."),
                me,
                response,
                model);
    }

    private String act(
            Run run,
            @Nullable String formToken,
            Supplier<Optional<String>> work,
            SignedInPerson me,
            HttpServletResponse response,
            Model model) {
        Map<String, String> errors = new LinkedHashMap<>();
        Optional<String> next = once.run(formToken, () -> {
            Optional<String> wrong = work.get();
            wrong.ifPresent(says -> errors.put("criterion", says));
            return wrong.isPresent() ? null : "/runs/" + run.id() + "/evidence";
        });
        if (next.isPresent()) {
            return "redirect:" + next.get();
        }
        response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
        return page(run, me, errors, model);
    }

    private static UUID id(String text) {
        try {
            return Id.parse(text);
        } catch (IllegalArgumentException notAnId) {
            return new UUID(0, 0);
        }
    }

    /** Who had a part in it, and lab staff. */
    private Run links(RunId run, SignedInPerson me) {
        return runs.find(run)
                .filter(one -> me.isLabStaff() || one.involves(me.id()))
                .orElseThrow(() -> new NotFoundException("run"));
    }

    private Run visible(RunId run, SignedInPerson me) {
        return runs.find(run)
                .filter(one -> me.isLabStaff() || me.is(Role.REVIEWER) || one.involves(me.id()))
                .orElseThrow(() -> new NotFoundException("run"));
    }

    private String page(Run run, SignedInPerson me, Map<String, String> errors, Model model) {
        List<Line> lines = evidence.of(run.id()).stream().map(this::line).toList();
        Map<String, String> open = new LinkedHashMap<>();
        evidence.open(run.id()).forEach(one -> open.put(one.id().toString(), one.line()));
        long confirmed = lines.stream().filter(Line::confirmed).count();
        model.addAttribute("run", run);
        model.addAttribute("what", story.of(run, me).headline());
        model.addAttribute("outcome", evidence.outcome(run.id()).orElseThrow());
        Instant ended = run.endedAt();
        model.addAttribute("ended", ended == null ? "not yet" : labTime.full(ended));
        model.addAttribute("lines", lines);
        model.addAttribute("open", open);
        model.addAttribute("links", me.isLabStaff() || run.involves(me.id()));
        model.addAttribute("confirms", me.is(Role.INSTRUCTOR));
        model.addAttribute(
                "headline",
                lines.isEmpty()
                        ? "This run is evidence for nothing yet"
                        : "Evidence for " + lines.size() + (lines.size() == 1 ? " criterion, " : " criteria, ")
                                + confirmed + " confirmed");
        model.addAttribute("errors", errors);
        return "runs/evidence";
    }

    private Line line(Evidence.Link one) {
        PersonId by = one.confirmedBy();
        Instant at = one.confirmedAt();
        return new Line(
                one.criterion().id().toString(),
                one.criterion().line(),
                "linked by " + people.printedName(one.linkedBy()) + " " + labTime.full(one.linkedAt()),
                by != null,
                by == null || at == null
                        ? "not confirmed yet"
                        : "confirmed by " + people.printedName(by) + " " + labTime.full(at));
    }
}
