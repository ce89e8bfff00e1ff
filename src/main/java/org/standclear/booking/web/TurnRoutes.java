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

/** Who may wait for slots and read calendars; only lab staff see other people's turns and move everybody. */
@Component
class TurnRoutes implements RouteRules {

    private static final List<String> ALL_WHO_BOOK = List.of(
            "GET /book/waits",
            "POST /book/waits",
            "POST /book/waits/{wait}/leave",
            "GET /book/offers/{offer}",
            "POST /book/offers/{offer}/take",
            "POST /book/offers/{offer}/decline",
            "GET /bookings/{booking}/lost",
            "POST /bookings/{booking}/lost",
            "GET /me/calendar",
            "POST /me/calendar",
            "POST /me/calendar/{feed}/revoke");

    private static final List<String> LAB_STAFF = List.of(
            "GET /book/lost",
            "POST /bookings/{booking}/excuse",
            "POST /bookings/{booking}/count-again",
            "GET /people/{person}/turns",
            "POST /people/{person}/turns/arrangements",
            "POST /people/{person}/turns/count-anew",
            "POST /people/{person}/turns/make-up",
            "GET /book/make-ups",
            "POST /book/make-ups",
            "GET /book/make-ups/{makeUp}/withdraw",
            "POST /book/make-ups/{makeUp}/withdraw",
            "GET /cells/{cell}/move-all",
            "POST /cells/{cell}/move-all",
            "GET /book/moves/{move}",
            "POST /book/moves/{move}/undo");

    @Override
    public List<RouteRule> rules() {
        Stream<RouteRule> calendars = Stream.of(RouteRule.anyone(HttpMethod.GET, "/calendar/{secret}"));
        Stream<RouteRule> all = ALL_WHO_BOOK.stream().map(route -> rule(route, STUDENT, TECHNICIAN, INSTRUCTOR));
        Stream<RouteRule> staff = LAB_STAFF.stream().map(route -> rule(route, TECHNICIAN, INSTRUCTOR));
        return Stream.of(calendars, all, staff).flatMap(rules -> rules).toList();
    }

    private static RouteRule rule(String route, Role... roles) {
        int blank = route.indexOf(' ');
        return RouteRule.roles(HttpMethod.valueOf(route.substring(0, blank)), route.substring(blank + 1), roles);
    }
}
