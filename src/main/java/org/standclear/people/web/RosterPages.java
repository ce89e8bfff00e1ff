package org.standclear.people.web;

import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import org.springframework.dao.DuplicateKeyException;
import org.springframework.http.HttpStatus;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.multipart.MultipartFile;
import org.standclear.people.People;
import org.standclear.people.RosterImports;
import org.standclear.people.RosterImports.Preview;
import org.standclear.people.RosterImports.Read;
import org.standclear.people.RosterImports.Return;
import org.standclear.people.RosterImports.SentFile;
import org.standclear.people.RosterImports.State;
import org.standclear.platform.access.AccessLog;
import org.standclear.platform.access.Sight;
import org.standclear.platform.forms.PostOnce;
import org.standclear.platform.security.SignedInPerson;
import org.standclear.platform.time.LabTime;
import org.standclear.platform.web.NotFoundException;

/** Rosters: send a file, look at the differences, apply them, take them back. */
@Controller
class RosterPages {

    private static final int TRIES = 3;
    private static final String PATH = "/people/rosters";
    private static final int SHOWN = 20;
    private static final int NAMED = 30;
    private static final int LISTED = 100;

    private final RosterImports rosters;
    private final People people;
    private final PostOnce postOnce;
    private final LabTime labTime;
    private final AccessLog looks;

    RosterPages(RosterImports rosters, People people, PostOnce postOnce, LabTime labTime, AccessLog looks) {
        this.rosters = rosters;
        this.people = people;
        this.postOnce = postOnce;
        this.labTime = labTime;
        this.looks = looks;
    }

    /** A roster in the list. */
    record Line(UUID id, String name, String words, String state, String stateWords) {}

    @GetMapping(PATH)
    String list(Model model) {
        return page(List.of(), model);
    }

    @PostMapping(PATH)
    String read(
            @RequestParam(required = false) @Nullable String formToken,
            @RequestParam(required = false) @Nullable List<MultipartFile> file,
            @AuthenticationPrincipal SignedInPerson me,
            HttpServletResponse response,
            Model model) {
        AtomicReference<List<String>> wrong = new AtomicReference<>(List.of());
        List<SentFile> sent = file == null ? List.of() : sent(file);
        if (sent.isEmpty()) {
            wrong.set(List.of("Choose a file first."));
        } else {
            Optional<String> done = postOnce.run(formToken, () -> {
                Read read = rosters.read(sent, me.id());
                if (read instanceof Read.Refused refused) {
                    wrong.set(refused.says());
                    return null;
                }
                return PATH + "/" + ((Read.Kept) read).id();
            });
            if (done.isPresent()) {
                return "redirect:" + done.get();
            }
        }
        response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
        return page(Objects.requireNonNull(wrong.get()), model);
    }

    private static List<SentFile> sent(List<MultipartFile> files) {
        return files.stream()
                .filter(one -> !one.isEmpty())
                .map(one -> new SentFile(plainName(String.valueOf(one.getOriginalFilename())), bytes(one)))
                .toList();
    }

    /** Some browsers send the folder too. */
    private static String plainName(String name) {
        return name.substring(Math.max(name.lastIndexOf('/'), name.lastIndexOf('\\')) + 1);
    }

    private static byte[] bytes(MultipartFile file) {
        try {
            return file.getBytes();
        } catch (IOException broken) {
            throw new UncheckedIOException(broken);
        }
    }

    @GetMapping(PATH + "/{roster}")
    String preview(
            @PathVariable UUID roster,
            @RequestParam(required = false) @Nullable Integer after,
            @AuthenticationPrincipal SignedInPerson me,
            Model model) {
        found(roster);
        model.addAttribute("after", after == null ? 0 : after);
        return one(roster, me, Map.of(), model);
    }

    @PostMapping(PATH + "/{roster}/apply")
    String apply(
            @PathVariable UUID roster,
            @RequestParam(required = false) @Nullable String formToken,
            @RequestParam(required = false) @Nullable String takeOut,
            @RequestParam(defaultValue = "") String seen,
            @AuthenticationPrincipal SignedInPerson me,
            HttpServletResponse response,
            Model model) {
        return act(
                roster,
                me,
                formToken,
                () -> rosters.apply(roster, "true".equals(takeOut), seen, me.id()),
                response,
                model);
    }

    @PostMapping(PATH + "/{roster}/undo")
    String undo(
            @PathVariable UUID roster,
            @RequestParam(required = false) @Nullable String formToken,
            @AuthenticationPrincipal SignedInPerson me,
            HttpServletResponse response,
            Model model) {
        return act(roster, me, formToken, () -> rosters.undo(roster, me.id()), response, model);
    }

    private String act(
            UUID roster,
            SignedInPerson me,
            @Nullable String formToken,
            Supplier<Optional<String>> act,
            HttpServletResponse response,
            Model model) {
        found(roster);
        Map<String, String> errors = new LinkedHashMap<>();
        Optional<String> done = again(formToken, errors, () -> {
            Optional<String> refusal = act.get();
            refusal.ifPresent(says -> errors.put("", says));
            return refusal.isPresent() ? null : PATH + "/" + roster;
        });
        if (done.isPresent()) {
            return "redirect:" + done.get();
        }
        response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
        return one(roster, me, errors, model);
    }

    /**
     * Once more where another roster, or somebody by hand, added the same account or enrolment at the same moment: then that
     * is there, and the act is about what there is.
     */
    private Optional<String> again(
            @Nullable String formToken, Map<String, String> errors, Supplier<@Nullable String> act) {
        for (int times = 0; times < TRIES; times++) {
            try {
                return postOnce.runPatiently(formToken, act);
            } catch (DuplicateKeyException sameMoment) {
                errors.clear();
            }
        }
        errors.put("", "Others changed accounts or enrolments at the same moment. Nothing was stored; look again.");
        return Optional.empty();
    }

    private Preview found(UUID roster) {
        return rosters.preview(roster).orElseThrow(() -> new NotFoundException("roster"));
    }

    private String page(List<String> wrong, Model model) {
        List<Line> lines = rosters.latest(SHOWN).stream().map(this::line).toList();
        model.addAttribute("lines", lines);
        model.addAttribute("wrong", wrong);
        model.addAttribute(
                "headline",
                wrong.isEmpty() ? lines.isEmpty() ? "No roster was sent yet" : "Rosters" : "The roster was not read");
        return "people/rosters";
    }

    private String one(UUID roster, SignedInPerson me, Map<String, String> errors, Model model) {
        looks.lookedAtMany(me.id(), Sight.ROSTER, roster.toString());
        Preview preview = found(roster);
        int gone = preview.takenOut().stream()
                .mapToInt(section -> section.people().size())
                .sum();
        model.addAttribute("preview", preview);
        model.addAttribute("line", line(preview));
        model.addAttribute("open", preview.state() == State.READ);
        model.addAttribute("applied", preview.state() == State.APPLIED);
        model.addAttribute("added", cut(preview.added()));
        model.addAttribute("enrolled", cut(preview.enrolled()));
        model.addAttribute("notes", cut(preview.notes()));
        model.addAttribute("gone", gone);
        back(preview, model);
        model.addAttribute(
                "headline",
                switch (preview.state()) {
                    case READ ->
                        counted(preview.added().size(), "new account") + ", "
                                + counted(preview.enrolled().size(), "new enrolment") + ", " + gone
                                + " not in the file";
                    case APPLIED -> "Applied: " + preview.fileName();
                    case UNDONE ->
                        (preview.decidedBy() == null ? "Never applied: " : "Taken back: ") + preview.fileName();
                });
        model.addAttribute("errors", errors);
        return "people/roster";
    }

    /** What taking it back changed, so many lines a page. */
    private void back(Preview preview, Model model) {
        boolean undone = preview.state() == State.UNDONE;
        Integer after = (Integer) model.getAttribute("after");
        List<Return> returns =
                undone ? rosters.returns(preview.id(), after == null ? 0 : after, LISTED + 1) : List.of();
        List<Return> shown = returns.subList(0, Math.min(LISTED, returns.size()));
        model.addAttribute("undone", undone);
        model.addAttribute("returns", shown.stream().map(BackLine::of).toList());
        model.addAttribute(
                "nextReturns",
                returns.size() > LISTED
                        ? PATH + "/" + preview.id() + "?after="
                                + shown.get(LISTED - 1).number()
                        : null);
    }

    private static String counted(int count, String what) {
        return count + " " + what + (count == 1 ? "" : "s");
    }

    private static List<String> cut(List<String> all) {
        return all.size() <= NAMED
                ? all
                : java.util.stream.Stream.concat(
                                all.stream().limit(NAMED),
                                java.util.stream.Stream.of("and " + (all.size() - NAMED) + " more"))
                        .toList();
    }

    private Line line(Preview one) {
        var decided = one.decidedAt();
        var by = one.decidedBy();
        String read = one.lines() + " students, sent by " + people.printedName(one.readBy()) + ", "
                + labTime.full(one.readAt());
        return new Line(
                one.id(),
                one.fileName(),
                decided == null || by == null
                        ? read
                        : read + "; " + (one.state() == State.APPLIED ? "applied" : "taken back") + " by "
                                + people.printedName(by) + ", " + labTime.full(decided),
                one.state() == State.APPLIED ? "done" : one.state() == State.READ ? "waiting" : "cancelled",
                switch (one.state()) {
                    case READ -> "to be looked at";
                    case APPLIED -> "applied";
                    case UNDONE -> one.decidedBy() == null ? "never applied" : "taken back";
                });
    }
}
