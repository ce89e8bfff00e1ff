package org.standclear.signoff.web;

import java.util.List;
import org.springframework.http.HttpMethod;
import org.springframework.stereotype.Component;
import org.standclear.platform.security.Role;
import org.standclear.platform.security.RouteRule;
import org.standclear.platform.security.RouteRules;

/** Who may attach programs to bookings, and who changes the numbers of the bench. */
@Component
class SignoffRoutes implements RouteRules {

    private static final Role[] WRITERS = {Role.STUDENT, Role.TECHNICIAN, Role.INSTRUCTOR};

    @Override
    public List<RouteRule> rules() {
        return List.of(
                RouteRule.roles(HttpMethod.GET, "/bookings/{booking}/program", WRITERS),
                RouteRule.roles(HttpMethod.POST, "/bookings/{booking}/program", WRITERS),
                RouteRule.roles(HttpMethod.GET, "/bookings/{booking}/waiver", Role.INSTRUCTOR),
                RouteRule.roles(HttpMethod.POST, "/bookings/{booking}/waiver", Role.INSTRUCTOR),
                RouteRule.roles(HttpMethod.POST, "/bookings/{booking}/waiver/take-back", Role.INSTRUCTOR),
                RouteRule.roles(HttpMethod.GET, "/bench-numbers", Role.TECHNICIAN, Role.INSTRUCTOR, Role.REVIEWER),
                RouteRule.roles(HttpMethod.GET, "/cells/{cell}/card", WRITERS),
                RouteRule.roles(HttpMethod.GET, "/cells/{cell}/paper", Role.TECHNICIAN, Role.INSTRUCTOR),
                RouteRule.roles(HttpMethod.POST, "/cells/{cell}/paper", Role.TECHNICIAN, Role.INSTRUCTOR),
                RouteRule.roles(HttpMethod.POST, "/bench-numbers", Role.INSTRUCTOR));
    }
}
