package org.standclear.cell.web;

import jakarta.servlet.http.HttpServletResponse;
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
import org.standclear.cell.Cell;
import org.standclear.cell.Cells;
import org.standclear.cell.Equipment;
import org.standclear.cell.ToolChanges;
import org.standclear.cell.ToolChanges.Change;
import org.standclear.cell.ToolChanges.Outcome;
import org.standclear.platform.forms.PostOnce;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.Id;
import org.standclear.platform.security.SignedInPerson;
import org.standclear.platform.web.NotFoundException;

/** A tool change at the cell: choose a registered tool, then two people read the offset, each alone. */
@Controller
class ToolChangePages {

    private final Cells cells;
    private final ToolChanges changes;
    private final Equipment equipment;
    private final PostOnce postOnce;

    ToolChangePages(Cells cells, ToolChanges changes, Equipment equipment, PostOnce postOnce) {
        this.cells = cells;
        this.changes = changes;
        this.equipment = equipment;
        this.postOnce = postOnce;
    }

    /** What was typed; never sent back, so that nobody reads another's number. */
    record ChangeForm(
            @Nullable String formToken,
            @Nullable String tool,
            @Nullable String toolCode,
            @Nullable String offsetX,
            @Nullable String offsetY,
            @Nullable String offsetZ,
            @Nullable String act) {}

    @GetMapping("/cells/{cell}/tool-change")
    String show(@PathVariable CellId cell, @AuthenticationPrincipal SignedInPerson me, Model model) {
        return page(found(cell), new FormErrors(), me, model);
    }

    @PostMapping("/cells/{cell}/tool-change")
    String begin(
            @PathVariable CellId cell,
            @ModelAttribute ChangeForm form,
            @AuthenticationPrincipal SignedInPerson me,
            HttpServletResponse response,
            Model model) {
        FormErrors errors = new FormErrors();
        Supplier<Outcome> work = () -> "give-up".equals(form.act())
                ? changes.giveUp(cell, me.id())
                : changes.begin(cell, id(form.tool()), me.id());
        return act(found(cell), form, work, errors, me, response, model);
    }

    @PostMapping("/cells/{cell}/tool-change/reading")
    String read(
            @PathVariable CellId cell,
            @ModelAttribute ChangeForm form,
            @AuthenticationPrincipal SignedInPerson me,
            HttpServletResponse response,
            Model model) {
        FormErrors errors = new FormErrors();
        String code = TextField.read(errors, "toolCode", form.toolCode(), 60, "Type the code that stands on the tool.");
        List<Double> offset = List.of(
                Millimetres.read(errors, "offsetX", form.offsetX()),
                Millimetres.read(errors, "offsetY", form.offsetY()),
                Millimetres.read(errors, "offsetZ", form.offsetZ()));
        if (errors.any()) {
            response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
            return page(found(cell), errors, me, model);
        }
        return act(found(cell), form, () -> changes.read(cell, code, offset, me.id()), errors, me, response, model);
    }

    /** A reading that differs is kept too, so a refusal of it is told and not rolled back. */
    private String act(
            Cell cell,
            ChangeForm form,
            Supplier<Outcome> work,
            FormErrors errors,
            SignedInPerson me,
            HttpServletResponse response,
            Model model) {
        AtomicReference<@Nullable Outcome> came = new AtomicReference<>();
        String here = "/cells/" + cell.id() + "/tool-change";
        Optional<String> next = postOnce.run(form.formToken(), () -> {
            Outcome outcome = work.get();
            came.set(outcome);
            return outcome instanceof Outcome.Done ? "/cells/" + cell.id() : here;
        });
        if (came.get() instanceof Outcome.Refused refused) {
            errors.add("", refused.says());
            response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
            return page(cell, errors, me, model);
        }
        return "redirect:" + next.orElse(here);
    }

    private String page(Cell cell, FormErrors errors, SignedInPerson me, Model model) {
        Change open = changes.open(cell.id()).orElse(null);
        Map<String, String> tools = new LinkedHashMap<>();
        equipment.all().stream()
                .filter(item -> item.kind() == Equipment.Kind.TOOL && item.approved())
                .forEach(item -> tools.put(item.id().toString(), item.code() + ", " + item.name()));
        model.addAttribute("cell", cell);
        model.addAttribute("staff", me.isLabStaff());
        model.addAttribute("open", open);
        model.addAttribute("hasRead", open != null && open.readers().contains(me.id()));
        model.addAttribute("fitted", cells.current(cell.id()).fittedTool());
        model.addAttribute("tools", tools);
        model.addAttribute("errors", errors.all());
        return "cell/tool-change";
    }

    private static UUID id(@Nullable String raw) {
        try {
            return Id.parse(raw == null ? "" : raw);
        } catch (IllegalArgumentException none) {
            return new UUID(0, 0);
        }
    }

    private Cell found(CellId id) {
        return cells.find(id).orElseThrow(() -> new NotFoundException("cell"));
    }
}
