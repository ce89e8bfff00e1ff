package org.standclear.booking.web;

import jakarta.servlet.http.HttpServletResponse;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
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
import org.standclear.booking.labs.LabRegister;
import org.standclear.booking.labs.LabRegister.Outcome;
import org.standclear.people.People;
import org.standclear.people.Person;
import org.standclear.platform.forms.PostOnce;
import org.standclear.platform.ids.LabId;
import org.standclear.platform.lab.Lab;
import org.standclear.platform.lab.Labs;
import org.standclear.platform.security.Role;
import org.standclear.platform.security.SignedInPerson;
import org.standclear.platform.time.Zones;
import org.standclear.platform.web.NotFoundException;

/** The administrator's pages about labs: the list, making one, one lab with its staff. */
@Controller
class LabsPages {

    /** In the order in which the page names them. */
    static final List<Role> STAFF = List.of(Role.TECHNICIAN, Role.INSTRUCTOR, Role.REVIEWER);

    private final LabRegister register;
    private final Labs labs;
    private final People people;
    private final PostOnce postOnce;

    LabsPages(LabRegister register, Labs labs, People people, PostOnce postOnce) {
        this.register = register;
        this.labs = labs;
        this.people = people;
        this.postOnce = postOnce;
    }

    /** Somebody of the staff, with what they are in this lab. */
    record Staff(String id, String name, String roles) {}

    @GetMapping("/labs")
    String list(Model model) {
        return list(NewLabForm.EMPTY, Map.of(), model);
    }

    @PostMapping("/labs")
    String make(
            @ModelAttribute NewLabForm form,
            @AuthenticationPrincipal SignedInPerson me,
            HttpServletResponse response,
            Model model) {
        Map<String, String> errors = new LinkedHashMap<>();
        Optional<NewLabForm.Read> wanted = form.read(errors);
        if (wanted.isPresent()) {
            NewLabForm.Read read = wanted.get();
            Optional<String> done = postOnce.run(
                    form.formToken(),
                    () -> after(register.make(read.lab(), read.hours(), read.login(), read.role(), me.id()), errors));
            if (done.isPresent()) {
                return "redirect:" + done.get();
            }
        }
        response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
        return list(form, errors, model);
    }

    private static @Nullable String after(Outcome outcome, Map<String, String> errors) {
        if (outcome instanceof Outcome.Refused refused) {
            errors.put(refused.field(), refused.says());
            return null;
        }
        return "/labs/" + ((Outcome.Done) outcome).lab();
    }

    private String list(NewLabForm form, Map<String, String> errors, Model model) {
        List<LabRegister.Line> all = register.all();
        Map<String, String> zones = new LinkedHashMap<>();
        zones.put("", "choose");
        zones.putAll(Zones.choices());
        model.addAttribute("labs", all);
        model.addAttribute("headline", all.size() == 1 ? "One lab" : all.size() + " labs");
        model.addAttribute("zones", zones);
        model.addAttribute("roles", roles());
        model.addAttribute("form", form);
        model.addAttribute("errors", errors);
        return "booking/labs";
    }

    private static Map<String, String> roles() {
        Map<String, String> roles = new LinkedHashMap<>();
        STAFF.forEach(role -> roles.put(role.name(), role.words()));
        return roles;
    }

    @GetMapping("/labs/{lab}")
    String show(@PathVariable LabId lab, Model model) {
        return show(the(lab), "", List.of(), Map.of(), model);
    }

    @PostMapping("/labs/{lab}/staff")
    String appoint(
            @PathVariable LabId lab,
            @RequestParam(required = false) @Nullable String formToken,
            @RequestParam(defaultValue = "") String login,
            @RequestParam(required = false) @Nullable List<String> roles,
            @AuthenticationPrincipal SignedInPerson me,
            HttpServletResponse response,
            Model model) {
        Lab of = the(lab);
        List<String> chosen = roles == null ? List.of() : roles;
        Map<String, String> errors = new LinkedHashMap<>();
        Optional<String> done = postOnce.run(
                formToken, () -> after(register.appoint(lab, login.strip(), read(chosen), me.id()), errors));
        if (done.isPresent()) {
            return "redirect:" + done.get();
        }
        response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
        return show(of, login, chosen, errors, model);
    }

    private static Set<Role> read(List<String> names) {
        return STAFF.stream()
                .filter(role -> names.contains(role.name()))
                .collect(java.util.stream.Collectors.toUnmodifiableSet());
    }

    private Lab the(LabId id) {
        return labs.find(id).orElseThrow(() -> new NotFoundException("lab"));
    }

    private String show(Lab lab, String login, List<String> chosen, Map<String, String> errors, Model model) {
        model.addAttribute("lab", lab);
        model.addAttribute(
                "staff",
                STAFF.stream()
                        .flatMap(role -> people.with(role).stream())
                        .distinct()
                        .map(LabsPages::staff)
                        .toList());
        model.addAttribute("roles", roles());
        model.addAttribute("chosen", chosen);
        model.addAttribute("login", login);
        model.addAttribute("errors", errors);
        return "booking/lab";
    }

    private static Staff staff(Person person) {
        return new Staff(
                person.id().toString(),
                person.printedName(),
                person.roles().stream().sorted().map(Role::words).collect(java.util.stream.Collectors.joining(", ")));
    }
}
