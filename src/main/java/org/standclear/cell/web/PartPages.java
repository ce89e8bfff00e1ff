package org.standclear.cell.web;

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
import org.standclear.cell.CellRegister.Proposed;
import org.standclear.cell.Cells;
import org.standclear.cell.Equipment;
import org.standclear.cell.Equipment.Item;
import org.standclear.cell.Equipment.Kind;
import org.standclear.cell.PartChanges;
import org.standclear.cell.PartChanges.Footprint;
import org.standclear.platform.forms.PostOnce;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.Id;
import org.standclear.platform.security.SignedInPerson;
import org.standclear.platform.web.NotFoundException;

/** Parts and fixtures at a cell: what is put there or taken away becomes a proposal of the cell's next version. */
@Controller
class PartPages {

    private final Cells cells;
    private final Equipment equipment;
    private final PartChanges changes;
    private final PostOnce postOnce;

    PartPages(Cells cells, Equipment equipment, PartChanges changes, PostOnce postOnce) {
        this.cells = cells;
        this.equipment = equipment;
        this.changes = changes;
        this.postOnce = postOnce;
    }

    /** What was chosen and typed. */
    record PartForm(
            @Nullable String formToken,
            @Nullable String act,
            @Nullable String item,
            @Nullable String xFrom,
            @Nullable String xTo,
            @Nullable String yFrom,
            @Nullable String yTo) {}

    @GetMapping("/cells/{cell}/parts")
    String show(@PathVariable CellId cell, Model model) {
        return page(found(cell), new PartForm(null, null, null, null, null, null, null), new FormErrors(), model);
    }

    @PostMapping("/cells/{cell}/parts")
    String change(
            @PathVariable CellId cell,
            @ModelAttribute PartForm form,
            @AuthenticationPrincipal SignedInPerson me,
            HttpServletResponse response,
            Model model) {
        Cell found = found(cell);
        FormErrors errors = new FormErrors();
        Item item = item(form.item());
        boolean away = "take-away".equals(form.act());
        if (item == null) {
            errors.add("item", "Choose a part or a fixture from the list.");
        }
        Footprint where = item != null && item.kind() == Kind.FIXTURE && !away ? where(form, errors) : null;
        if (item != null && !errors.any()) {
            AtomicReference<Proposed.@Nullable Refused> refused = new AtomicReference<>();
            Optional<String> next = postOnce.run(form.formToken(), () -> {
                Proposed proposed = away
                        ? changes.takeAway(cell, item.id(), me.id())
                        : changes.put(cell, item.id(), where, me.id());
                if (proposed instanceof Proposed.Kept kept) {
                    return "/cells/proposals/" + kept.proposal().id();
                }
                refused.set((Proposed.Refused) proposed);
                return null;
            });
            if (next.isPresent()) {
                return "redirect:" + next.get();
            }
            Proposed.Refused no = refused.get();
            errors.add(no == null ? "" : no.field(), no == null ? "Send it again." : no.says());
        }
        response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
        return page(found, form, errors, model);
    }

    private static Footprint where(PartForm form, FormErrors errors) {
        String ask = "Type the edge in mm, in the cell's frame.";
        return new Footprint(
                Millimetres.read(errors, "xFrom", form.xFrom(), ask),
                Millimetres.read(errors, "xTo", form.xTo(), ask),
                Millimetres.read(errors, "yFrom", form.yFrom(), ask),
                Millimetres.read(errors, "yTo", form.yTo(), ask));
    }

    private @Nullable Item item(@Nullable String raw) {
        try {
            return equipment.find(Id.parse(raw == null ? "" : raw)).orElse(null);
        } catch (IllegalArgumentException none) {
            return null;
        }
    }

    private String page(Cell cell, PartForm form, FormErrors errors, Model model) {
        List<String> there = changes.at(cell.id());
        Map<String, String> choices = new LinkedHashMap<>();
        choices.put("", "Choose");
        List<Item> items = equipment.all().stream()
                .filter(item -> item.kind() != Kind.TOOL && item.approved())
                .toList();
        items.forEach(item ->
                choices.put(item.id().toString(), item.kind().words() + " " + item.code() + ", " + item.name()));
        model.addAttribute("cell", cell);
        model.addAttribute(
                "there",
                items.stream().filter(item -> there.contains(item.code())).toList());
        model.addAttribute("choices", choices);
        model.addAttribute("form", form);
        model.addAttribute("errors", errors.all());
        return "cell/parts-here";
    }

    private Cell found(CellId id) {
        return cells.find(id).orElseThrow(() -> new NotFoundException("cell"));
    }
}
