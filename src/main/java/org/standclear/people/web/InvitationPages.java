package org.standclear.people.web;

import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpMethod;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Component;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.standclear.people.Invitations;
import org.standclear.people.People;
import org.standclear.people.Person;
import org.standclear.platform.forms.PostOnce;
import org.standclear.platform.ids.CourseId;
import org.standclear.platform.security.Role;
import org.standclear.platform.security.RouteRule;
import org.standclear.platform.security.RouteRules;
import org.standclear.platform.security.SignedInPerson;
import org.standclear.platform.time.LabTime;
import org.standclear.platform.web.NotFoundException;

/** Being asked into a course of another lab: yes or no; and taking the question back. */
@Controller
class InvitationPages {

    private static final String PATH = "/me/invitations";

    private final Invitations invitations;
    private final People people;
    private final PostOnce postOnce;
    private final LabTime labTime;

    InvitationPages(Invitations invitations, People people, PostOnce postOnce, LabTime labTime) {
        this.invitations = invitations;
        this.people = people;
        this.postOnce = postOnce;
        this.labTime = labTime;
    }

    /** One's own are one's own; those of a course are for who may enrol. */
    @Component
    static class Rules implements RouteRules {
        @Override
        public List<RouteRule> rules() {
            Role[] everybody = {Role.STUDENT, Role.TECHNICIAN, Role.INSTRUCTOR, Role.REVIEWER, Role.ADMINISTRATOR};
            return List.of(
                    RouteRule.roles(HttpMethod.GET, PATH, everybody),
                    RouteRule.roles(HttpMethod.POST, PATH + "/{invitation}/accept", everybody),
                    RouteRule.roles(HttpMethod.POST, PATH + "/{invitation}/decline", everybody),
                    RouteRule.roles(
                            HttpMethod.POST,
                            "/courses/{course}/invitations/{invitation}/withdraw",
                            Role.INSTRUCTOR,
                            Role.ADMINISTRATOR));
        }
    }

    /** One of them in words. */
    record Line(UUID id, String words, String asked) {}

    @GetMapping(PATH)
    String mine(@AuthenticationPrincipal SignedInPerson me, Model model) {
        List<Line> lines = invitations.of(myself(me)).stream()
                .map(one -> new Line(
                        one.id(),
                        one.lab() + ": " + one.course() + ", section " + one.section(),
                        "asked by " + people.printedName(one.by()) + ", " + labTime.full(one.at())))
                .toList();
        model.addAttribute("lines", lines);
        return "people/invitations";
    }

    @PostMapping(PATH + "/{invitation}/accept")
    String accept(
            @PathVariable UUID invitation,
            @RequestParam(required = false) @Nullable String formToken,
            @AuthenticationPrincipal SignedInPerson me) {
        Person person = myself(me);
        return act(formToken, PATH, () -> invitations.accept(invitation, person).isPresent());
    }

    @PostMapping(PATH + "/{invitation}/decline")
    String decline(
            @PathVariable UUID invitation,
            @RequestParam(required = false) @Nullable String formToken,
            @AuthenticationPrincipal SignedInPerson me) {
        Person person = myself(me);
        return act(formToken, PATH, () -> invitations.decline(invitation, person));
    }

    @PostMapping("/courses/{course}/invitations/{invitation}/withdraw")
    String withdraw(
            @PathVariable CourseId course,
            @PathVariable UUID invitation,
            @RequestParam(required = false) @Nullable String formToken,
            @AuthenticationPrincipal SignedInPerson me) {
        return act(formToken, "/courses/" + course, () -> invitations.withdraw(course, invitation, me.id()));
    }

    private String act(@Nullable String formToken, String next, java.util.function.BooleanSupplier act) {
        return "redirect:"
                + postOnce.run(formToken, () -> act.getAsBoolean() ? next : null)
                        .orElseThrow(() -> new NotFoundException("invitation"));
    }

    private Person myself(SignedInPerson me) {
        return people.find(me.id()).orElseThrow(() -> new NotFoundException("person"));
    }
}
