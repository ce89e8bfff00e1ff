package org.standclear.run.web;

import jakarta.servlet.http.HttpServletResponse;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.concurrent.atomic.AtomicReference;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import org.standclear.platform.forms.PostOnce;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.Id;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.security.SignedInPerson;
import org.standclear.platform.web.NotFoundException;
import org.standclear.signoff.Obstacle;
import org.standclear.signoff.Part;
import org.standclear.signoff.SignoffDesk;
import org.standclear.signoff.SignoffDesk.Entered;
import org.standclear.signoff.SignoffDesk.Signed;

/** Takes answers and signatures of the two lists. */
@Controller
class BenchListActs {

    private final SignoffDesk desk;
    private final BenchPages pages;
    private final PostOnce once;

    BenchListActs(SignoffDesk desk, BenchPages pages, PostOnce once) {
        this.desk = desk;
        this.pages = pages;
        this.once = once;
    }

    /** Where the form came from and whose part it fills. */
    record ListForm(UUID sheet, Part part, Map<String, String> fields) {

        static ListForm of(Map<String, String> fields) {
            try {
                return new ListForm(
                        Id.parse(fields.getOrDefault("sheet", "")), Part.of(fields.getOrDefault("part", "")), fields);
            } catch (IllegalArgumentException broken) {
                throw new NotFoundException("list");
            }
        }
    }

    @PostMapping("/bench/{cell}/answers")
    String answer(
            @PathVariable CellId cell,
            @RequestParam Map<String, String> fields,
            @AuthenticationPrincipal SignedInPerson me,
            RedirectAttributes flash,
            HttpServletResponse response,
            Model model) {
        ListForm form = ListForm.of(fields);
        int item = number(fields.getOrDefault("item", ""));
        AtomicReference<Entered.Refused> refused = new AtomicReference<>();
        Optional<String> next = once.run(fields.get("formToken"), () -> {
            Entered entered = desk.enter(
                    new SignoffDesk.EnterAnswer(form.sheet(), form.part(), me.id(), item, new HashMap<>(fields)));
            if (entered instanceof Entered.Refused no) {
                refused.set(no);
                return null;
            }
            if (entered instanceof Entered.Disagrees disagrees) {
                flash.addFlashAttribute("stopped", disagrees.disagreement().says());
            }
            if (entered instanceof Entered.MovedOn moved) {
                flash.addFlashAttribute("told", moved.says());
            }
            return address(cell);
        });
        if (next.isPresent()) {
            return "redirect:" + next.get();
        }
        Entered.Refused no = refused.get();
        return again(cell, me, no == null ? Map.of() : Map.of(no.field(), no.says()), fields, response, model);
    }

    @PostMapping("/bench/{cell}/back")
    String back(
            @PathVariable CellId cell,
            @RequestParam Map<String, String> fields,
            @AuthenticationPrincipal SignedInPerson me) {
        ListForm form = ListForm.of(fields);
        once.run(fields.get("formToken"), () -> {
            desk.stepBack(form.sheet(), form.part(), me.id());
            return address(cell);
        });
        return "redirect:" + address(cell);
    }

    @PostMapping("/bench/{cell}/signatures")
    String sign(
            @PathVariable CellId cell,
            @RequestParam Map<String, String> fields,
            @AuthenticationPrincipal SignedInPerson me,
            RedirectAttributes flash,
            HttpServletResponse response,
            Model model) {
        ListForm form = ListForm.of(fields);
        Optional<PersonId> signer = BenchStages.id(fields.getOrDefault("signer", ""));
        if (signer.isEmpty()) {
            return again(cell, me, Map.of("signer", "Choose who signs."), fields, response, model);
        }
        AtomicReference<Signed.Refused> refused = new AtomicReference<>();
        Optional<String> next = once.run(fields.get("formToken"), () -> {
            Signed signed = desk.sign(new SignoffDesk.SignPart(
                    form.sheet(),
                    form.part(),
                    me.id(),
                    signer.get(),
                    fields.get("pin"),
                    fields.getOrDefault("statement", "")));
            if (signed instanceof Signed.Refused no) {
                refused.set(no);
                return null;
            }
            if (signed instanceof Signed.NotReleased no) {
                flash.addFlashAttribute("stopped", "Not released: " + no.says());
            }
            if (signed instanceof Signed.MovedOn moved) {
                flash.addFlashAttribute("told", moved.says());
            }
            return address(cell);
        });
        if (next.isPresent()) {
            return "redirect:" + next.get();
        }
        return again(cell, me, errors(refused.get()), fields, response, model);
    }

    private static Map<String, String> errors(Signed.@Nullable Refused refused) {
        if (refused == null) {
            return Map.of();
        }
        Map<String, String> errors = new LinkedHashMap<>();
        String field = refused.field().equals("pin") ? "pin" : "";
        for (Obstacle obstacle : refused.obstacles()) {
            errors.merge(field, obstacle.line(), (one, more) -> one + " " + more);
        }
        return errors;
    }

    private String again(
            CellId cell,
            SignedInPerson me,
            Map<String, String> errors,
            Map<String, String> fields,
            HttpServletResponse response,
            Model model) {
        response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
        Map<String, String> typed = new HashMap<>(fields);
        typed.remove("pin");
        return pages.page(cell, me, errors, typed, model);
    }

    private static int number(String raw) {
        return raw.matches("[0-9]{1,3}") ? Integer.parseInt(raw) : 0;
    }

    static String address(CellId cell) {
        return "/bench/" + cell;
    }
}
