package org.standclear.booking.web;

import static org.standclear.platform.security.Role.ADMINISTRATOR;
import static org.standclear.platform.security.Role.INSTRUCTOR;
import static org.standclear.platform.security.Role.STUDENT;
import static org.standclear.platform.security.Role.TECHNICIAN;

import java.util.List;
import java.util.stream.Stream;
import org.springframework.http.HttpMethod;
import org.springframework.stereotype.Component;
import org.standclear.platform.security.RouteRule;
import org.standclear.platform.security.RouteRules;

/** Students and lab staff book; staff keep cells for themselves. Whose booking it is, is asked on each page. */
@Component
class BookRoutes implements RouteRules {

    @Override
    public List<RouteRule> rules() {
        return Stream.concat(
                        Stream.of(
                                        "GET /book",
                                        "GET /book/slot",
                                        "POST /book",
                                        "GET /bookings/{booking}/cancel",
                                        "POST /bookings/{booking}/cancel",
                                        "GET /bookings/{booking}/attendant",
                                        "POST /bookings/{booking}/attendant",
                                        "POST /bookings/{booking}/check-in",
                                        "GET /bookings/{booking}/coming",
                                        "POST /bookings/{booking}/coming",
                                        "GET /me/partners")
                                .map(route -> rule(route, STUDENT, TECHNICIAN, INSTRUCTOR)),
                        Stream.concat(
                                Stream.concat(
                                        leaders(),
                                        Stream.of(
                                                        "GET /courses/{course}/slot-length",
                                                        "POST /courses/{course}/slot-length",
                                                        "GET /courses/{course}/assignments/{assignment}",
                                                        "POST /courses/{course}/assignments/{assignment}/criteria",
                                                        "POST /courses/{course}/assignments/{assignment}/criteria/{criterion}/retire",
                                                        "POST /courses/{course}/assignments/{assignment}/needs")
                                                .map(route -> rule(route, INSTRUCTOR))),
                                Stream.of(
                                                "GET /bookings/{booking}/move",
                                                "POST /bookings/{booking}/move",
                                                "GET /closures/new",
                                                "POST /closures/new",
                                                "GET /closures/{closure}",
                                                "POST /closures/{closure}/remove")
                                        .map(route -> rule(route, TECHNICIAN, INSTRUCTOR))))
                .toList();
    }

    /** The lab's own rules are changed by who leads it. */
    private static Stream<RouteRule> leaders() {
        return Stream.of(
                        "GET /book/rules",
                        "POST /book/rules",
                        "GET /book/hours",
                        "POST /book/hours/week",
                        "POST /book/hours/days",
                        "POST /book/hours/days/remove",
                        "GET /courses/{course}/teams",
                        "POST /courses/{course}/teams",
                        "POST /courses/{course}/teams/{member}/remove")
                .map(route -> rule(route, INSTRUCTOR, ADMINISTRATOR));
    }

    private static RouteRule rule(String route, org.standclear.platform.security.Role... roles) {
        String[] parts = route.split(" ");
        return RouteRule.roles(HttpMethod.valueOf(parts[0]), parts[1], roles);
    }
}
