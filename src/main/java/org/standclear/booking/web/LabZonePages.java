package org.standclear.booking.web;

import jakarta.servlet.http.HttpServletResponse;
import java.time.ZoneId;
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
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.standclear.booking.labs.LabRegister.Outcome;
import org.standclear.booking.labs.ZoneChange;
import org.standclear.platform.forms.PostOnce;
import org.standclear.platform.ids.LabId;
import org.standclear.platform.lab.Lab;
import org.standclear.platform.lab.Labs;
import org.standclear.platform.security.Role;
import org.standclear.platform.security.RouteRule;
import org.standclear.platform.security.RouteRules;
import org.standclear.platform.security.SignedInPerson;
import org.standclear.platform.time.Zones;
import org.standclear.platform.web.NotFoundException;

/** Puts a lab into another time zone: why not now, or which one; then what would change, and whether it shall. */
@Controller
class LabZonePages {

    private final ZoneChange change;
    private final Labs labs;
    private final PostOnce postOnce;

    LabZonePages(ZoneChange change, Labs labs, PostOnce postOnce) {
        this.change = change;
        this.labs = labs;
        this.postOnce = postOnce;
    }

    /** Labs are the administrator's. */
    @Component
    static class Rules implements RouteRules {
        @Override
        public List<RouteRule> rules() {
            return List.of(
                    RouteRule.roles(HttpMethod.GET, "/labs/{lab}/zone", Role.ADMINISTRATOR),
                    RouteRule.roles(HttpMethod.POST, "/labs/{lab}/zone", Role.ADMINISTRATOR));
        }
    }

    @GetMapping("/labs/{lab}/zone")
    String ask(@PathVariable LabId lab, @RequestParam(required = false) @Nullable String to, Model model) {
        Map<String, String> errors = new LinkedHashMap<>();
        if (to != null && Zones.read(to).isEmpty()) {
            errors.put("to", "Choose the zone that the lab’s clocks shall show.");
        }
        return page(the(lab), to, "", errors, model);
    }

    @PostMapping("/labs/{lab}/zone")
    String change(
            @PathVariable LabId lab,
            @RequestParam Map<String, String> values,
            @AuthenticationPrincipal SignedInPerson me,
            HttpServletResponse response,
            Model model) {
        Lab shown = the(lab);
        Map<String, String> errors = new LinkedHashMap<>();
        Optional<ZoneId> to = Zones.read(values.getOrDefault("to", ""));
        Optional<ZoneId> seen = Zones.read(values.getOrDefault("seen", ""));
        String reason = values.getOrDefault("reason", "");
        if (to.isEmpty() || seen.isEmpty()) {
            errors.put("to", "Choose the zone that the lab’s clocks shall show.");
        } else {
            Optional<String> done = postOnce.run(
                    values.get("formToken"),
                    () -> kept(change.change(lab, seen.get(), to.get(), reason, me.id()), errors)
                            ? "/labs/" + lab
                            : null);
            if (done.isPresent()) {
                return "redirect:" + done.get();
            }
        }
        response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
        return page(shown, values.get("to"), reason, errors, model);
    }

    private static boolean kept(Outcome outcome, Map<String, String> errors) {
        if (outcome instanceof Outcome.Refused refused) {
            errors.put(refused.field(), refused.says());
            return false;
        }
        return true;
    }

    private Lab the(LabId id) {
        return labs.find(id).orElseThrow(() -> new NotFoundException("lab"));
    }

    private String page(Lab lab, @Nullable String to, String reason, Map<String, String> errors, Model model) {
        List<String> standing = change.standing(lab);
        Optional<ZoneId> wanted = standing.isEmpty()
                ? Zones.read(String.valueOf(to)).filter(zone -> !zone.equals(lab.zone()))
                : Optional.empty();
        Map<String, String> zones = new LinkedHashMap<>();
        zones.put("", "choose");
        zones.putAll(Zones.choices());
        zones.remove(lab.zone().getId());
        model.addAttribute("lab", lab);
        model.addAttribute("standing", standing);
        model.addAttribute("zones", zones);
        model.addAttribute("to", wanted.map(ZoneId::getId).orElse(""));
        model.addAttribute(
                "effects", wanted.map(zone -> change.effects(lab, zone)).orElse(List.of()));
        model.addAttribute("headline", headline(lab, standing, wanted));
        model.addAttribute("reason", reason);
        model.addAttribute("errors", errors);
        return "booking/lab-zone";
    }

    private static String headline(Lab lab, List<String> standing, Optional<ZoneId> wanted) {
        if (!standing.isEmpty()) {
            return lab.name() + " stays in " + lab.zone() + " for now";
        }
        return wanted.map(zone -> "Put " + lab.name() + " into " + zone + "?")
                .orElse(lab.name() + " is in " + lab.zone());
    }
}
