package org.standclear.people.web;

import jakarta.servlet.http.HttpServletResponse;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpMethod;
import org.springframework.http.HttpStatus;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Component;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PostMapping;
import org.standclear.platform.forms.PostOnce;
import org.standclear.platform.lab.Lab;
import org.standclear.platform.lab.Labs;
import org.standclear.platform.security.Role;
import org.standclear.platform.security.RouteRule;
import org.standclear.platform.security.RouteRules;
import org.standclear.platform.security.SignedInPerson;
import org.standclear.platform.text.PlainText;
import org.standclear.platform.web.StaleFormException;
import org.standclear.trail.Trail;
import org.standclear.trail.TrailEntry;

/** The facts of the lab that hang at every bench: whom to call, who gives first aid, where the e-stops are. */
@Controller
class LabPages {

    private static final String PATH = "/lab";

    private final Labs labs;
    private final Trail trail;
    private final PostOnce postOnce;

    LabPages(Labs labs, Trail trail, PostOnce postOnce) {
        this.labs = labs;
        this.trail = trail;
        this.postOnce = postOnce;
    }

    /** Who answers for them. */
    @Component
    static class Rules implements RouteRules {
        @Override
        public List<RouteRule> rules() {
            return List.of(
                    RouteRule.roles(HttpMethod.GET, PATH, Role.INSTRUCTOR, Role.ADMINISTRATOR),
                    RouteRule.roles(HttpMethod.POST, PATH, Role.INSTRUCTOR, Role.ADMINISTRATOR));
        }
    }

    /** The facts as the form was sent; {@code seen} is what it was filled in against. */
    record LabForm(
            @Nullable String formToken,
            @Nullable String seen,
            @Nullable String name,
            @Nullable String room,
            @Nullable String emergencyNumber,
            @Nullable String firstAider,
            @Nullable String stopMap,
            @Nullable String reason) {

        static LabForm of(Lab lab) {
            return new LabForm(
                    null,
                    String.valueOf(lab.hashCode()),
                    lab.name(),
                    lab.room(),
                    lab.emergencyNumber(),
                    lab.firstAider(),
                    lab.stopMap(),
                    "");
        }

        /** The lab with these facts; what cannot be kept is put with the errors. */
        Lab read(Lab lab, Map<String, String> errors) {
            return new Lab(
                    lab.id(),
                    lab.college(),
                    text("room", room, 200, errors),
                    text("name", name, 200, errors),
                    lab.zone(),
                    text("emergencyNumber", emergencyNumber, 40, errors),
                    text("firstAider", firstAider, 200, errors),
                    text("stopMap", stopMap, 400, errors));
        }

        static String text(String field, @Nullable String raw, int longest, Map<String, String> errors) {
            PlainText.Checked checked = PlainText.check(raw, longest);
            if (checked instanceof PlainText.Refused refused) {
                errors.put(field, refused.says());
                return "";
            }
            return ((PlainText.Fine) checked).text();
        }
    }

    @GetMapping(PATH)
    String show(Model model) {
        return page(LabForm.of(labs.theLab()), Map.of(), model);
    }

    @PostMapping(PATH)
    String change(
            @ModelAttribute LabForm form,
            @AuthenticationPrincipal SignedInPerson me,
            HttpServletResponse response,
            Model model) {
        Map<String, String> errors = new LinkedHashMap<>();
        Lab shown = labs.find(labs.theLab().id()).orElseThrow();
        Lab wanted = form.read(shown, errors);
        String reason = LabForm.text("reason", form.reason(), 400, errors);
        if (errors.isEmpty()) {
            Optional<String> done = postOnce.run(form.formToken(), () -> {
                // asked under the lock: of two who send at once, the second sees what the first wrote
                Lab before = labs.lock(wanted.id()).orElseThrow();
                if (!String.valueOf(before.hashCode()).equals(form.seen())) {
                    throw new StaleFormException("The lab's facts", PATH, words(wanted), words(before));
                }
                labs.change(wanted);
                trail.append(TrailEntry.of(
                                wanted.id(),
                                "people.lab-changed",
                                wanted.id(),
                                me.id(),
                                "Changed the lab's facts: " + reason)
                        .with("before", words(before))
                        .with("after", words(wanted)));
                return PATH;
            });
            if (done.isPresent()) {
                return "redirect:" + done.get();
            }
        }
        response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
        return page(form, errors, model);
    }

    private static Map<String, String> words(Lab lab) {
        Map<String, String> words = new LinkedHashMap<>();
        words.put("Name", lab.name());
        words.put("Room", lab.room());
        words.put("Emergency number", lab.emergencyNumber());
        words.put("First-aider", lab.firstAider());
        words.put("E-stop map", lab.stopMap());
        return words;
    }

    private String page(LabForm form, Map<String, String> errors, Model model) {
        Lab lab = labs.theLab();
        model.addAttribute(
                "headline",
                lab.unknown().isEmpty()
                        ? "The facts that hang at every bench"
                        : "Not known yet: " + String.join(", ", lab.unknown()));
        model.addAttribute("college", lab.college());
        model.addAttribute("zone", lab.zone().getId());
        model.addAttribute("lab", lab.id());
        model.addAttribute("form", form);
        model.addAttribute("errors", errors);
        return "people/lab";
    }
}
