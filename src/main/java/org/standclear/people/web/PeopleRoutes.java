package org.standclear.people.web;

import static org.springframework.http.HttpMethod.GET;
import static org.springframework.http.HttpMethod.POST;
import static org.standclear.platform.security.Role.ADMINISTRATOR;
import static org.standclear.platform.security.Role.INSTRUCTOR;
import static org.standclear.platform.security.Role.REVIEWER;
import static org.standclear.platform.security.Role.STUDENT;
import static org.standclear.platform.security.Role.TECHNICIAN;
import static org.standclear.platform.security.RouteRule.anyone;
import static org.standclear.platform.security.RouteRule.roles;
import static org.standclear.platform.security.RouteRule.signedIn;

import java.util.List;
import org.springframework.stereotype.Component;
import org.standclear.platform.security.Role;
import org.standclear.platform.security.RouteRule;
import org.standclear.platform.security.RouteRules;

/** Who may use the pages about people and courses. */
@Component
class PeopleRoutes implements RouteRules {

    private static final Role[] PEOPLE_NOT_SCREENS = {STUDENT, TECHNICIAN, INSTRUCTOR, REVIEWER, ADMINISTRATOR};
    private static final Role[] CHECKERS = {STUDENT, TECHNICIAN, INSTRUCTOR};
    private static final Role[] STAFF = {TECHNICIAN, INSTRUCTOR, ADMINISTRATOR};
    private static final Role[] LEADERS = {INSTRUCTOR, ADMINISTRATOR};

    @Override
    public List<RouteRule> rules() {
        return List.of(
                anyone(GET, "/sign-in"),
                anyone(POST, "/sign-in/refused"),
                anyone(GET, "/setup"),
                anyone(POST, "/setup"),
                signedIn(GET, "/me/password"),
                signedIn(POST, "/me/password"),
                roles(GET, "/me/pin", PEOPLE_NOT_SCREENS),
                roles(POST, "/me/pin", PEOPLE_NOT_SCREENS),
                roles(GET, "/me/tokens", CHECKERS),
                roles(POST, "/me/tokens", CHECKERS),
                roles(POST, "/me/tokens/{token}/revoke", CHECKERS),
                roles(GET, "/people", STAFF),
                roles(POST, "/people", ADMINISTRATOR),
                roles(GET, "/people/new", ADMINISTRATOR),
                roles(GET, "/people/authorisations", STAFF),
                roles(GET, "/people/duty", STAFF),
                roles(POST, "/people/duty", STAFF),
                roles(POST, "/people/duty/{period}/remove", STAFF),
                roles(GET, "/people/{person}", STAFF),
                roles(POST, "/people/{person}/roles", ADMINISTRATOR),
                roles(POST, "/people/{person}/password", ADMINISTRATOR),
                roles(POST, "/people/{person}/cell", ADMINISTRATOR),
                roles(GET, "/people/{person}/close", ADMINISTRATOR),
                roles(POST, "/people/{person}/close", ADMINISTRATOR),
                roles(POST, "/people/{person}/open", ADMINISTRATOR),
                roles(GET, "/people/{person}/authorisations", LEADERS),
                roles(POST, "/people/{person}/authorisations", LEADERS),
                roles(GET, "/people/{person}/authorisations/{authorisation}/revoke", LEADERS),
                roles(POST, "/people/{person}/authorisations/{authorisation}/revoke", LEADERS),
                roles(GET, "/courses", LEADERS),
                roles(POST, "/courses", LEADERS),
                roles(GET, "/courses/{course}", LEADERS),
                roles(POST, "/courses/{course}/limits", INSTRUCTOR),
                roles(POST, "/courses/{course}/sections", LEADERS),
                roles(POST, "/courses/{course}/students", LEADERS),
                roles(POST, "/courses/{course}/assignments", INSTRUCTOR));
    }
}
