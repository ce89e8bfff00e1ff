package org.standclear.run.web;

import java.util.List;
import org.springframework.http.HttpMethod;
import org.springframework.stereotype.Component;
import org.standclear.platform.security.Role;
import org.standclear.platform.security.RouteRule;
import org.standclear.platform.security.RouteRules;

/** Who may use the bench screens and the pages of runs. Stops and holds are open to everybody with an account. */
@Component
class RunRoutes implements RouteRules {

    private static final Role[] AT_THE_CELL = {Role.STUDENT, Role.TECHNICIAN, Role.INSTRUCTOR, Role.BENCH};
    private static final Role[] READERS = {Role.STUDENT, Role.TECHNICIAN, Role.INSTRUCTOR, Role.REVIEWER};

    @Override
    public List<RouteRule> rules() {
        return List.of(
                RouteRule.signedIn(HttpMethod.GET, "/bench"),
                RouteRule.signedIn(HttpMethod.GET, "/bench/{cell}"),
                RouteRule.signedIn(HttpMethod.GET, "/bench/{cell}/pulse"),
                RouteRule.signedIn(HttpMethod.POST, "/bench/{cell}/stop"),
                RouteRule.signedIn(HttpMethod.POST, "/bench/{cell}/holds"),
                RouteRule.roles(HttpMethod.POST, "/bench/{cell}/withdraw", AT_THE_CELL),
                RouteRule.roles(HttpMethod.POST, "/bench/{cell}/answers", AT_THE_CELL),
                RouteRule.roles(HttpMethod.POST, "/bench/{cell}/back", AT_THE_CELL),
                RouteRule.roles(HttpMethod.POST, "/bench/{cell}/signatures", AT_THE_CELL),
                RouteRule.roles(HttpMethod.POST, "/bench/{cell}/start", AT_THE_CELL),
                RouteRule.roles(HttpMethod.POST, "/bench/{cell}/passes", AT_THE_CELL),
                RouteRule.roles(HttpMethod.POST, "/bench/{cell}/reset", AT_THE_CELL),
                RouteRule.roles(HttpMethod.POST, "/bench/{cell}/finish", AT_THE_CELL),
                RouteRule.roles(HttpMethod.POST, "/bench/{cell}/close-out", AT_THE_CELL),
                RouteRule.roles(HttpMethod.POST, "/bench/{cell}/handover", AT_THE_CELL),
                RouteRule.roles(HttpMethod.POST, "/bench/{cell}/watched", AT_THE_CELL),
                RouteRule.roles(HttpMethod.GET, "/runs/{run}/evidence", READERS),
                RouteRule.roles(
                        HttpMethod.POST, "/runs/{run}/evidence", Role.STUDENT, Role.TECHNICIAN, Role.INSTRUCTOR),
                RouteRule.roles(
                        HttpMethod.POST,
                        "/runs/{run}/evidence/{criterion}/remove",
                        Role.STUDENT,
                        Role.TECHNICIAN,
                        Role.INSTRUCTOR),
                RouteRule.roles(HttpMethod.POST, "/runs/{run}/evidence/{criterion}/confirm", Role.INSTRUCTOR),
                RouteRule.roles(HttpMethod.POST, "/runs/{run}/evidence/{criterion}/take-back", Role.INSTRUCTOR),
                RouteRule.roles(HttpMethod.GET, "/attendants", Role.STUDENT, Role.TECHNICIAN, Role.INSTRUCTOR),
                RouteRule.roles(
                        HttpMethod.POST, "/attendants/{booking}/take", Role.STUDENT, Role.TECHNICIAN, Role.INSTRUCTOR),
                RouteRule.roles(HttpMethod.GET, "/runs", READERS),
                RouteRule.roles(HttpMethod.GET, "/runs/credits", Role.TECHNICIAN, Role.INSTRUCTOR),
                RouteRule.roles(HttpMethod.GET, "/runs/{run}", READERS),
                RouteRule.roles(
                        HttpMethod.POST, "/runs/{run}/corrections", Role.STUDENT, Role.TECHNICIAN, Role.INSTRUCTOR));
    }
}
