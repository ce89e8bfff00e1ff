package org.standclear.booking.web;

import static org.standclear.platform.security.Role.INSTRUCTOR;

import java.util.List;
import org.springframework.http.HttpMethod;
import org.springframework.stereotype.Component;
import org.standclear.platform.security.RouteRule;
import org.standclear.platform.security.RouteRules;

/** Instructors set due dates, see what they lead to, and who had how many slots. */
@Component
class ForecastRoutes implements RouteRules {

    @Override
    public List<RouteRule> rules() {
        return List.of(
                RouteRule.roles(HttpMethod.GET, "/forecast", INSTRUCTOR),
                RouteRule.roles(HttpMethod.GET, "/forecast/{assignment}", INSTRUCTOR),
                RouteRule.roles(HttpMethod.GET, "/forecast/{assignment}/move", INSTRUCTOR),
                RouteRule.roles(HttpMethod.GET, "/fairness", INSTRUCTOR),
                RouteRule.roles(HttpMethod.GET, "/fairness/people.csv", INSTRUCTOR),
                RouteRule.roles(HttpMethod.POST, "/forecast/{assignment}/move", INSTRUCTOR));
    }
}
