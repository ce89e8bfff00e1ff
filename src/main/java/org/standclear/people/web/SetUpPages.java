package org.standclear.people.web;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.time.ZoneId;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.standclear.people.signin.ClientAddress;
import org.standclear.people.signin.SetUp;
import org.standclear.people.signin.SetUp.Compared;
import org.standclear.people.signin.SetUp.Finished;
import org.standclear.people.signin.SetUp.FirstAdministrator;
import org.standclear.platform.forms.PostOnce;
import org.standclear.platform.lab.Lab;
import org.standclear.platform.lab.Labs;
import org.standclear.platform.time.LabTime;
import org.standclear.platform.time.Zones;
import org.standclear.platform.web.NotFoundException;

/** The first page of a new installation; once the lab has an administrator there is no such page. */
@Controller
class SetUpPages {

    private final SetUp setUp;
    private final Labs labs;
    private final LabTime labTime;
    private final PostOnce postOnce;

    SetUpPages(SetUp setUp, Labs labs, LabTime labTime, PostOnce postOnce) {
        this.setUp = setUp;
        this.labs = labs;
        this.labTime = labTime;
        this.postOnce = postOnce;
    }

    @GetMapping("/setup")
    String form(Model model) {
        needed();
        Map<String, String> empty = new LinkedHashMap<>();
        empty.put("zone", ZoneId.systemDefault().getId());
        return page(new Typed(empty), model);
    }

    @PostMapping("/setup")
    String setUp(
            @RequestParam Map<String, String> values,
            HttpServletRequest request,
            HttpServletResponse response,
            Model model) {
        needed();
        Typed typed = new Typed(values);
        Optional<FirstAdministrator> asked = read(typed);
        if (asked.isPresent() && codeIsRight(typed, ClientAddress.of(request.getRemoteAddr()))) {
            Optional<String> done = postOnce.run(typed.raw("formToken"), () -> finish(typed, asked.get()));
            if (done.isPresent()) {
                return "redirect:" + done.get();
            }
        }
        response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
        return page(typed, model);
    }

    private @Nullable String finish(Typed typed, FirstAdministrator asked) {
        Finished finished = setUp.finish(asked);
        if (finished instanceof Finished.Done) {
            return "/sign-in?ready";
        }
        if (finished instanceof Finished.Refused refused) {
            typed.refuse(refused.field(), refused.says());
            return null;
        }
        throw new NotFoundException("page");
    }

    private void needed() {
        if (!setUp.isNeeded()) {
            throw new NotFoundException("page");
        }
    }

    private boolean codeIsRight(Typed typed, String address) {
        Compared compared = setUp.compare(typed.raw("code"), address);
        if (compared instanceof Compared.Paused paused) {
            typed.refuse(
                    "code", "Too many tries. The next one is looked at from " + labTime.seconds(paused.until()) + ".");
        } else if (compared instanceof Compared.Wrong) {
            typed.refuse("code", "This is not the code. The latest start printed it to the application's log.");
        }
        return compared instanceof Compared.Right;
    }

    private Optional<FirstAdministrator> read(Typed typed) {
        Lab lab = new Lab(
                labs.theLab().id(),
                typed.text("college", 200),
                typed.text("room", 200),
                typed.text("labName", 200),
                zone(typed),
                typed.text("emergencyNumber", 40),
                typed.text("firstAider", 200),
                typed.text("stopMap", 400));
        String name = typed.text("printedName", 80);
        String login = typed.text("login", 60);
        if (!typed.raw("password").equals(typed.raw("passwordAgain"))) {
            typed.refuse("passwordAgain", "The two passwords differ. Type the same one twice.");
        }
        return typed.errors().isEmpty()
                ? Optional.of(new FirstAdministrator(login, name, typed.raw("password"), lab))
                : Optional.empty();
    }

    private static ZoneId zone(Typed typed) {
        return Zones.read(typed.raw("zone")).orElseGet(() -> {
            typed.refuse("zone", "Choose the zone that the lab's clocks show.");
            return ZoneId.of("UTC");
        });
    }

    private static String page(Typed typed, Model model) {
        model.addAttribute("typed", typed);
        model.addAttribute("errors", typed.errors());
        model.addAttribute("zones", Zones.choices());
        return "people/set-up";
    }
}
