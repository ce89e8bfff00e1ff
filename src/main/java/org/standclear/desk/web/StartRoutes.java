package org.standclear.desk.web;

import static org.standclear.platform.security.Role.ADMINISTRATOR;
import static org.standclear.platform.security.Role.INSTRUCTOR;
import static org.standclear.platform.security.Role.REVIEWER;
import static org.standclear.platform.security.Role.STUDENT;
import static org.standclear.platform.security.Role.TECHNICIAN;

import java.util.List;
import org.springframework.http.HttpMethod;
import org.springframework.stereotype.Component;
import org.standclear.platform.security.RouteRule;
import org.standclear.platform.security.RouteRules;

/** Everybody has a start and sees today; a page of their own have people, not shared screens. */
@Component
class StartRoutes implements RouteRules {

    @Override
    public List<RouteRule> rules() {
        return List.of(
                RouteRule.signedIn(HttpMethod.GET, "/"),
                RouteRule.signedIn(HttpMethod.GET, "/today"),
                RouteRule.roles(HttpMethod.GET, "/me", STUDENT, TECHNICIAN, INSTRUCTOR, REVIEWER, ADMINISTRATOR),
                RouteRule.roles(HttpMethod.GET, "/bookings/{booking}", STUDENT, TECHNICIAN, INSTRUCTOR));
    }
}
