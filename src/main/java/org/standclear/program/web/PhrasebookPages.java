package org.standclear.program.web;

import jakarta.servlet.http.HttpServletResponse;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicReference;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.standclear.cell.Cell;
import org.standclear.cell.Cells;
import org.standclear.cell.VersionEffects;
import org.standclear.platform.forms.PostOnce;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.security.SignedInPerson;
import org.standclear.platform.web.NotFoundException;
import org.standclear.program.PhrasebookVersion;
import org.standclear.program.Phrasebooks;

/** The phrasebook of a cell: read, tried on a program, and kept as a new version. */
@Controller
class PhrasebookPages {

    private static final String FIRST = """
            phrasebook: 1
            name: Name of the language
            ignore-case: true
            phrases:
              - {pattern: 'move to {point}', means: joint-move}
            """;

    private final Cells cells;
    private final Phrasebooks phrasebooks;
    private final VersionEffects effects;
    private final PostOnce postOnce;

    PhrasebookPages(Cells cells, Phrasebooks phrasebooks, VersionEffects effects, PostOnce postOnce) {
        this.effects = effects;
        this.cells = cells;
        this.phrasebooks = phrasebooks;
        this.postOnce = postOnce;
    }

    @GetMapping("/cells/{cell}/phrasebook")
    String show(@PathVariable CellId cell, @AuthenticationPrincipal SignedInPerson me, Model model) {
        return show(found(cell), null, PhrasebookForm.of("", 0), Map.of(), me, model);
    }

    /** Nothing is kept, so that it may be sent as often as wanted. */
    @PostMapping("/cells/{cell}/phrasebook")
    String tryOut(
            @PathVariable CellId cell,
            @ModelAttribute PhrasebookForm form,
            @AuthenticationPrincipal SignedInPerson me,
            HttpServletResponse response,
            Model model) {
        Cell found = found(cell);
        PhrasebookVersion version = phrasebooks.current(cell).orElseThrow(() -> new NotFoundException("phrasebook"));
        Map<String, String> errors = new LinkedHashMap<>();
        TriedView tried = form.tried(version.book(), errors);
        if (!errors.isEmpty()) {
            response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
        }
        return show(found, tried, form, errors, me, model);
    }

    @GetMapping("/cells/{cell}/phrasebook/versions/{number}")
    String version(@PathVariable CellId cell, @PathVariable int number, Model model) {
        model.addAttribute("cell", found(cell));
        model.addAttribute(
                "version",
                phrasebooks
                        .version(cell, number)
                        .orElseThrow(() -> new NotFoundException("version of the phrasebook")));
        return "program/phrasebook-version";
    }

    @GetMapping("/cells/{cell}/phrasebook/edit")
    String edit(@PathVariable CellId cell, Model model) {
        Optional<PhrasebookVersion> version = phrasebooks.current(cell);
        PhrasebookForm form = PhrasebookForm.of(
                version.map(PhrasebookVersion::book).orElse(FIRST),
                version.map(PhrasebookVersion::number).orElse(0));
        return edit(found(cell), form, null, Map.of(), model);
    }

    @PostMapping("/cells/{cell}/phrasebook/edit")
    String keep(
            @PathVariable CellId cell,
            @ModelAttribute PhrasebookForm form,
            @AuthenticationPrincipal SignedInPerson me,
            HttpServletResponse response,
            Model model) {
        Cell found = found(cell);
        Map<String, String> errors = new LinkedHashMap<>();
        TriedView tried = form.tries() ? form.tried(form.bookText(), errors) : null;
        if (!form.tries()) {
            Optional<String> next = kept(found, form, me, errors);
            if (next.isPresent()) {
                return "redirect:" + next.get();
            }
        }
        if (!errors.isEmpty()) {
            response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
        }
        return edit(found, form, tried, errors, model);
    }

    private Optional<String> kept(Cell cell, PhrasebookForm form, SignedInPerson me, Map<String, String> errors) {
        String reason = form.reasonRead(errors);
        if (!errors.isEmpty()) {
            return Optional.empty();
        }
        AtomicReference<Phrasebooks.@Nullable Refused> refusal = new AtomicReference<>();
        Optional<String> next = postOnce.run(form.formToken(), () -> {
            Phrasebooks.Outcome outcome = phrasebooks.keep(
                    new Phrasebooks.NewVersion(cell.id(), form.bookText(), reason, me.id(), form.base()));
            if (outcome instanceof Phrasebooks.Refused refused) {
                refusal.set(refused);
                return null;
            }
            return "/cells/" + cell.id() + "/phrasebook";
        });
        Phrasebooks.Refused refused = refusal.get();
        if (refused != null) {
            errors.put("book", refused.says());
        }
        return next;
    }

    private String show(
            Cell cell,
            @Nullable TriedView tried,
            PhrasebookForm form,
            Map<String, String> errors,
            SignedInPerson me,
            Model model) {
        model.addAttribute("cell", cell);
        model.addAttribute("versions", phrasebooks.versions(cell.id()));
        model.addAttribute("tried", tried);
        model.addAttribute("form", form);
        model.addAttribute("errors", errors);
        model.addAttribute("staff", me.isLabStaff());
        model.addAttribute("effects", me.isLabStaff() ? effects.of(cell.id()) : List.of());
        return "program/phrasebook";
    }

    private static String edit(
            Cell cell, PhrasebookForm form, @Nullable TriedView tried, Map<String, String> errors, Model model) {
        model.addAttribute("cell", cell);
        model.addAttribute("form", form);
        model.addAttribute("tried", tried);
        model.addAttribute("errors", errors);
        return "program/phrasebook-edit";
    }

    private Cell found(CellId id) {
        return cells.find(id).orElseThrow(() -> new NotFoundException("cell"));
    }
}
