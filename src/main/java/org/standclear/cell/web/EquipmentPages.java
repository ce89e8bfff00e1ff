package org.standclear.cell.web;

import jakarta.servlet.http.HttpServletResponse;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
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
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import org.standclear.cell.Equipment;
import org.standclear.cell.Equipment.Item;
import org.standclear.cell.Equipment.Kept;
import org.standclear.cell.Equipment.Kind;
import org.standclear.cell.PartChanges;
import org.standclear.platform.forms.PostOnce;
import org.standclear.platform.ids.Id;
import org.standclear.platform.security.PrintedNames;
import org.standclear.platform.security.SignedInPerson;
import org.standclear.platform.time.SqlTime;
import org.standclear.platform.web.NotFoundException;

/** The register of tools, parts and fixtures. */
@Controller
class EquipmentPages {

    private static final String ADDRESS = "/equipment";

    private final Equipment equipment;
    private final PartChanges changes;
    private final PrintedNames names;
    private final PostOnce postOnce;
    private final Clock clock;

    EquipmentPages(Equipment equipment, PartChanges changes, PrintedNames names, PostOnce postOnce, Clock clock) {
        this.names = names;
        this.equipment = equipment;
        this.changes = changes;
        this.postOnce = postOnce;
        this.clock = clock;
    }

    /** An item as it was typed. */
    record ItemForm(
            @Nullable String formToken,
            @Nullable String kind,
            @Nullable String code,
            @Nullable String name,
            @Nullable String massKg,
            @Nullable String offsetX,
            @Nullable String offsetY,
            @Nullable String offsetZ,
            @Nullable String overhangMm,
            @Nullable String edges) {

        static ItemForm empty() {
            return new ItemForm(null, null, null, null, null, null, null, null, null, null);
        }

        Optional<Kind> kindRead(FormErrors errors) {
            for (Kind one : Kind.values()) {
                if (one.words().equals(kind)) {
                    return Optional.of(one);
                }
            }
            errors.add("kind", "Choose tool, part or fixture.");
            return Optional.empty();
        }
    }

    @GetMapping(ADDRESS)
    String show(@AuthenticationPrincipal SignedInPerson me, Model model) {
        return page(ItemForm.empty(), new FormErrors(), me, model);
    }

    @PostMapping(ADDRESS)
    String register(
            @ModelAttribute ItemForm form,
            @AuthenticationPrincipal SignedInPerson me,
            HttpServletResponse response,
            Model model) {
        FormErrors errors = new FormErrors();
        Optional<Kind> kind = form.kindRead(errors);
        String code = TextField.read(errors, "code", form.code(), 30, "Type the code that stands on it.");
        if (!errors.has("code") && !code.matches("[A-Za-z0-9][A-Za-z0-9-]*")) {
            errors.add("code", "Letters, digits and hyphens, as G-02.");
        }
        String name = TextField.read(errors, "name", form.name(), 100, "Say what it is.");
        double mass = Millimetres.read(errors, "massKg", form.massKg(), "Type the mass in kg, as weighed.");
        boolean tool = kind.filter(Kind.TOOL::equals).isPresent();
        List<Double> offset = tool
                ? List.of(
                        Millimetres.read(errors, "offsetX", form.offsetX()),
                        Millimetres.read(errors, "offsetY", form.offsetY()),
                        Millimetres.read(errors, "offsetZ", form.offsetZ()))
                : List.of();
        boolean measured = form.overhangMm() != null && !form.overhangMm().isBlank();
        Double overhang = tool || measured ? Millimetres.read(errors, "overhangMm", form.overhangMm()) : null;
        if (errors.any()) {
            response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
            return page(form, errors, me, model);
        }
        Item item = new Item(
                Id.newValue(),
                kind.orElseThrow(),
                code,
                name,
                mass,
                offset,
                overhang,
                "true".equals(form.edges()),
                me.id(),
                SqlTime.stored(clock.instant()),
                null);
        return act(form, () -> equipment.register(item), errors, me, response, model);
    }

    @PostMapping("/equipment/{item}/approve")
    String approve(
            @PathVariable UUID item,
            @RequestParam(required = false) @Nullable String formToken,
            @AuthenticationPrincipal SignedInPerson me,
            RedirectAttributes flash,
            HttpServletResponse response,
            Model model) {
        if (equipment.find(item).isEmpty()) {
            throw new NotFoundException("item");
        }
        ItemForm form = new ItemForm(formToken, null, null, null, null, null, null, null, null, null);
        List<String> followed = new ArrayList<>();
        Supplier<Kept> work = () -> {
            PartChanges.Approved approved = changes.approve(item, me.id());
            if (approved instanceof PartChanges.Approved.Done done) {
                followed.addAll(done.followed());
                return new Kept.Registered(done.item());
            }
            PartChanges.Approved.Refused no = (PartChanges.Approved.Refused) approved;
            return new Kept.Refused(no.field(), no.says());
        };
        String answer = act(form, work, new FormErrors(), me, response, model);
        if (!followed.isEmpty()) {
            flash.addFlashAttribute("told", "Approved. " + String.join(". ", followed) + ".");
        }
        return answer;
    }

    private String act(
            ItemForm form,
            Supplier<Kept> work,
            FormErrors errors,
            SignedInPerson me,
            HttpServletResponse response,
            Model model) {
        AtomicReference<Kept.@Nullable Refused> refused = new AtomicReference<>();
        Optional<String> next = postOnce.run(form.formToken(), () -> {
            if (work.get() instanceof Kept.Refused no) {
                refused.set(no);
                return null;
            }
            return ADDRESS;
        });
        if (next.isPresent()) {
            return "redirect:" + next.get();
        }
        Kept.Refused no = refused.get();
        errors.add(no == null ? "" : no.field(), no == null ? "Send it again." : no.says());
        response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
        return page(form, errors, me, model);
    }

    private String page(ItemForm form, FormErrors errors, SignedInPerson me, Model model) {
        List<Item> items = equipment.all();
        model.addAttribute("items", items);
        model.addAttribute(
                "names",
                names.knowing(items.stream()
                        .map(Item::approvedBy)
                        .filter(Objects::nonNull)
                        .toList()));
        model.addAttribute("kinds", Map.of("tool", "tool", "part", "part", "fixture", "fixture"));
        model.addAttribute("me", me.id());
        model.addAttribute("staff", me.isLabStaff());
        model.addAttribute("form", form);
        model.addAttribute("errors", errors.all());
        return "cell/equipment";
    }
}
