package org.standclear.cell.web;

import jakarta.servlet.http.HttpServletResponse;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
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
import org.standclear.cell.CellStates;
import org.standclear.cell.CellTag;
import org.standclear.cell.Cells;
import org.standclear.platform.forms.PostOnce;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.security.Role;
import org.standclear.platform.security.SignedInPerson;
import org.standclear.platform.web.NotFoundException;

/** Lockouts are kept apart from tags; and any tag can be printed and hung on the cell. */
@Controller
class LockoutPages {

    private final Cells cells;
    private final CellStates states;
    private final PostOnce postOnce;

    LockoutPages(Cells cells, CellStates states, PostOnce postOnce) {
        this.cells = cells;
        this.states = states;
        this.postOnce = postOnce;
    }

    /** A lockout or its end as it was typed. */
    record LockoutForm(
            @Nullable String formToken,
            @Nullable String where,
            @Nullable String work,
            @Nullable String reason) {

        static LockoutForm empty() {
            return new LockoutForm(null, null, null, null);
        }
    }

    @GetMapping("/cells/{cell}/lockout")
    String form(@PathVariable CellId cell, @AuthenticationPrincipal SignedInPerson me, Model model) {
        return page(found(cell), LockoutForm.empty(), new FormErrors(), me, model);
    }

    @PostMapping("/cells/{cell}/lockout")
    String lockOut(
            @PathVariable CellId cell,
            @ModelAttribute LockoutForm form,
            @AuthenticationPrincipal SignedInPerson me,
            HttpServletResponse response,
            Model model) {
        Cell found = found(cell);
        FormErrors errors = new FormErrors();
        String where = TextField.read(errors, "where", form.where(), 200, "Say where the energy is isolated.");
        String work = TextField.read(errors, "work", form.work(), 500, "Say what is worked on.");
        if (errors.any()) {
            response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
            return page(found, form, errors, me, model);
        }
        String next = address(cell);
        return "redirect:"
                + postOnce.run(form.formToken(), () -> {
                            states.lockOut(cell, me.id(), work + "; lock at " + where);
                            return next;
                        })
                        .orElse(next);
    }

    @PostMapping("/cells/{cell}/lockout/{tag}/remove")
    String remove(
            @PathVariable CellId cell,
            @PathVariable UUID tag,
            @ModelAttribute LockoutForm form,
            @AuthenticationPrincipal SignedInPerson me,
            HttpServletResponse response,
            Model model) {
        Cell found = found(cell);
        FormErrors errors = new FormErrors();
        String reason =
                TextField.read(errors, "reason", form.reason(), 1000, "Say what was done, and that all is closed.");
        if (!errors.any()) {
            AtomicReference<@Nullable String> refused = new AtomicReference<>();
            Optional<String> next = postOnce.run(form.formToken(), () -> {
                CellStates.Return outcome = states.removeLockout(cell, tag, me.id(), me.is(Role.INSTRUCTOR), reason);
                if (outcome instanceof CellStates.Return.Refused no) {
                    refused.set(no.says());
                    return null;
                }
                return "/cells/" + cell;
            });
            if (next.isPresent()) {
                return "redirect:" + next.get();
            }
            errors.add("", String.valueOf(refused.get()));
        }
        response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
        return page(found, form, errors, me, model);
    }

    private String page(Cell cell, LockoutForm form, FormErrors errors, SignedInPerson me, Model model) {
        List<CellTag> hanging = states.tags(cell.id()).stream()
                .filter(tag -> tag.hangs() && tag.kind() == CellTag.Kind.LOCKOUT)
                .toList();
        model.addAttribute("cell", cell);
        model.addAttribute("hanging", hanging);
        model.addAttribute("me", me.id());
        model.addAttribute("instructor", me.is(Role.INSTRUCTOR));
        model.addAttribute("form", form);
        model.addAttribute("errors", errors.all());
        return "cell/lockout";
    }

    @GetMapping("/cells/{cell}/tags/{tag}")
    String tag(@PathVariable CellId cell, @PathVariable UUID tag, Model model) {
        Cell found = found(cell);
        CellTag shown = states.tags(cell).stream()
                .filter(one -> one.id().equals(tag))
                .findFirst()
                .orElseThrow(() -> new NotFoundException("tag"));
        model.addAttribute("cell", found);
        model.addAttribute("tag", shown);
        return "cell/tag";
    }

    private static String address(CellId cell) {
        return "/cells/" + cell + "/lockout";
    }

    private Cell found(CellId id) {
        return cells.find(id).orElseThrow(() -> new NotFoundException("cell"));
    }
}
