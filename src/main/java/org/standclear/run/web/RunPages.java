package org.standclear.run.web;

import jakarta.servlet.http.HttpServletResponse;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.concurrent.atomic.AtomicReference;
import org.springframework.http.HttpStatus;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.standclear.cell.Cells;
import org.standclear.people.People;
import org.standclear.platform.access.AccessLog;
import org.standclear.platform.access.Sight;
import org.standclear.platform.forms.PostOnce;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.Id;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.ids.RunId;
import org.standclear.platform.security.Role;
import org.standclear.platform.security.SignedInPerson;
import org.standclear.platform.text.PlainText;
import org.standclear.platform.time.LabTime;
import org.standclear.platform.web.NotFoundException;
import org.standclear.run.Run;
import org.standclear.run.RunLog;
import org.standclear.run.Runs;
import org.standclear.signoff.PaperCards;
import org.standclear.signoff.Part;

/** The list of runs, and the page of one. */
@Controller
class RunPages {

    private static final int PAGE = 30;
    private static final int LONGEST_CORRECTION = 400;

    private final Runs runs;
    private final RunLog log;
    private final RunStory story;
    private final PaperCards paper;
    private final Cells cells;
    private final People people;
    private final LabTime labTime;
    private final PostOnce once;
    private final AccessLog looks;

    RunPages(
            Runs runs,
            RunLog log,
            RunStory story,
            PaperCards paper,
            Cells cells,
            People people,
            LabTime labTime,
            PostOnce once,
            AccessLog looks) {
        this.runs = runs;
        this.log = log;
        this.story = story;
        this.paper = paper;
        this.cells = cells;
        this.people = people;
        this.labTime = labTime;
        this.once = once;
        this.looks = looks;
    }

    /** A line of the list. */
    record Line(
            String id,
            String day,
            String time,
            String cell,
            String operator,
            String attendant,
            String state,
            String stateWords,
            int passes,
            int stops) {}

    @GetMapping("/runs")
    String list(
            @RequestParam Map<String, String> parameters,
            @AuthenticationPrincipal SignedInPerson me,
            HttpServletResponse response,
            Model model) {
        RunFilterForm form = RunFilterForm.of(parameters);
        Map<String, String> errors = form.errors();
        if (!errors.isEmpty()) {
            response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
        }
        boolean all = seesAll(me);
        Runs.Page page = errors.isEmpty()
                ? runs.page(form.filter(all ? null : me.id()), form.position(), PAGE)
                : new Runs.Page(List.of(), null);
        model.addAttribute("form", form);
        model.addAttribute("errors", errors);
        model.addAttribute("lines", lines(page.runs()));
        model.addAttribute("next", page.next() == null ? null : form.address(page.next()));
        model.addAttribute("cells", cellChoices());
        model.addAttribute("all", all);
        model.addAttribute("staff", me.isLabStaff());
        return "runs/list";
    }

    private Map<String, String> cellChoices() {
        Map<String, String> choices = new LinkedHashMap<>();
        choices.put("", "all cells");
        cells.all().forEach(cell -> choices.put(cell.id().toString(), cell.name()));
        return choices;
    }

    private List<Line> lines(List<Run> shown) {
        Map<CellId, String> cellNames = new HashMap<>();
        cells.all().forEach(cell -> cellNames.put(cell.id(), cell.name()));
        Map<PersonId, String> names = people.printedNames(shown.stream()
                .flatMap(run -> run.people().stream())
                .map(Run.Involved::person)
                .toList());
        return shown.stream()
                .map(run -> line(run, cellNames.computeIfAbsent(run.cell(), story::cellName), names))
                .toList();
    }

    private Line line(Run run, String cell, Map<PersonId, String> names) {
        return new Line(
                run.id().toString(),
                labTime.day(run.startedAt()),
                labTime.time(run.startedAt()),
                cell,
                names(run, Part.OPERATOR, names),
                names(run, Part.ATTENDANT, names),
                StateMarks.of(run.state()),
                run.state().words(),
                run.passes(),
                run.stops());
    }

    private static String names(Run run, Part part, Map<PersonId, String> names) {
        return String.join(", ", run.inPart(part).stream().map(names::get).toList());
    }

    @GetMapping("/runs/{run}")
    String run(@PathVariable RunId run, @AuthenticationPrincipal SignedInPerson me, Model model) {
        return page(visible(run, me), me, Map.of(), Map.of(), model);
    }

    private String page(
            Run run, SignedInPerson me, Map<String, String> errors, Map<String, String> typed, Model model) {
        if (!run.involves(me.id())) {
            looks.looked(
                    me.id(),
                    Sight.RUN,
                    run.id().toString(),
                    run.people().stream().map(Run.Involved::person).toList());
        }
        model.addAttribute("view", story.of(run, me));
        model.addAttribute(
                "paper", paper.of(run.booking()).stream().map(paper::words).toList());
        model.addAttribute("whole", seesAll(me));
        model.addAttribute("errors", errors);
        model.addAttribute("typed", typed);
        return "runs/run";
    }

    @PostMapping("/runs/{run}/corrections")
    String correct(
            @PathVariable RunId run,
            @RequestParam Map<String, String> fields,
            @AuthenticationPrincipal SignedInPerson me,
            HttpServletResponse response,
            Model model) {
        Run found = visible(run, me);
        PlainText.Checked words = PlainText.check(fields.get("words"), LONGEST_CORRECTION);
        AtomicReference<String> says = new AtomicReference<>("");
        Optional<String> next = Optional.empty();
        if (words instanceof PlainText.Fine fine) {
            next = once.run(fields.get("formToken"), () -> {
                RunLog.Logged logged = log.correct(run, event(fields), fine.text(), me.id());
                if (logged instanceof RunLog.Logged.Refused refused) {
                    says.set(refused.says());
                    return null;
                }
                return "/runs/" + run;
            });
        } else {
            says.set("Say what was different, and why it is corrected. " + ((PlainText.Refused) words).says());
        }
        if (next.isPresent()) {
            return "redirect:" + next.get();
        }
        response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
        return page(found, me, Map.of("words", says.get()), fields, model);
    }

    private static UUID event(Map<String, String> fields) {
        try {
            return Id.parse(fields.getOrDefault("event", ""));
        } catch (IllegalArgumentException notAnId) {
            throw new NotFoundException("event");
        }
    }

    private Run visible(RunId id, SignedInPerson me) {
        return runs.find(id)
                .filter(run -> seesAll(me) || run.involves(me.id()))
                .orElseThrow(() -> new NotFoundException("run"));
    }

    private static boolean seesAll(SignedInPerson me) {
        return me.isLabStaff() || me.is(Role.REVIEWER);
    }
}
