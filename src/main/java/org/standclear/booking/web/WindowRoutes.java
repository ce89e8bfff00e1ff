package org.standclear.booking.web;

import static org.standclear.platform.security.Role.INSTRUCTOR;
import static org.standclear.platform.security.Role.STUDENT;
import static org.standclear.platform.security.Role.TECHNICIAN;

import java.util.List;
import java.util.stream.Stream;
import org.springframework.http.HttpMethod;
import org.springframework.stereotype.Component;
import org.standclear.platform.security.Role;
import org.standclear.platform.security.RouteRule;
import org.standclear.platform.security.RouteRules;

/** Everybody who books asks for turns; instructors search for plans, accept them and see who is left out. */
@Component
class WindowRoutes implements RouteRules {

    @Override
    public List<RouteRule> rules() {
        return Stream.concat(
                        Stream.of(
                                        "GET /windows",
                                        "GET /windows/{window}",
                                        "POST /windows/{window}/request",
                                        "POST /windows/{window}/withdraw",
                                        "POST /windows/{window}/partners/{operator}/decline",
                                        "POST /windows/{window}/partners/{operator}/can")
                                .map(route -> rule(route, STUDENT, TECHNICIAN, INSTRUCTOR)),
                        Stream.of(
                                        "POST /windows",
                                        "POST /windows/{window}/searches",
                                        "GET /windows/{window}/plan",
                                        "GET /windows/{window}/undo",
                                        "POST /windows/{window}/undo",
                                        "GET /windows/{window}/close",
                                        "POST /windows/{window}/close",
                                        "POST /windows/{window}/reopen",
                                        "GET /searches/{search}",
                                        "POST /searches/{search}/stop",
                                        "POST /searches/{search}/accept")
                                .map(route -> rule(route, INSTRUCTOR)))
                .toList();
    }

    private static RouteRule rule(String route, Role... roles) {
        String[] parts = route.split(" ");
        return RouteRule.roles(HttpMethod.valueOf(parts[0]), parts[1], roles);
    }
}
