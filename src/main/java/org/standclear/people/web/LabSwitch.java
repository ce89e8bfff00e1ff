package org.standclear.people.web;

import jakarta.servlet.http.HttpServletRequest;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpMethod;
import org.springframework.stereotype.Component;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.standclear.platform.forms.PostOnce;
import org.standclear.platform.lab.Labs;
import org.standclear.platform.security.LabOfRequest;
import org.standclear.platform.security.RouteRule;
import org.standclear.platform.security.RouteRules;

/** The switch in the header of people of several labs; whose lab it is not, the request's guard answers before. */
@Controller
class LabSwitch {

    private final Labs labs;
    private final PostOnce postOnce;

    LabSwitch(Labs labs, PostOnce postOnce) {
        this.labs = labs;
        this.postOnce = postOnce;
    }

    /** Whoever has an account. */
    @Component
    static class Rules implements RouteRules {
        @Override
        public List<RouteRule> rules() {
            return List.of(RouteRule.signedIn(HttpMethod.POST, "/labs/here"));
        }
    }

    /** The form names the lab, so the request is for that lab already; the session keeps it for the next ones. */
    @PostMapping("/labs/here")
    String choose(@RequestParam(required = false) @Nullable String formToken, HttpServletRequest request) {
        String to = postOnce.run(formToken, () -> {
                    request.getSession()
                            .setAttribute(
                                    LabOfRequest.CHOSEN, labs.theLab().id().toString());
                    return "/";
                })
                .orElse("/");
        return "redirect:" + to;
    }
}
