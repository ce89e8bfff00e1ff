package org.standclear.program.web;

import static org.standclear.platform.security.Role.INSTRUCTOR;
import static org.standclear.platform.security.Role.TECHNICIAN;

import java.util.List;
import org.springframework.http.HttpMethod;
import org.springframework.stereotype.Component;
import org.standclear.platform.security.RouteRule;
import org.standclear.platform.security.RouteRules;

/** Everybody signed in reads and tries phrasebooks; technicians and instructors keep new versions. */
@Component
class PhrasebookRoutes implements RouteRules {

    @Override
    public List<RouteRule> rules() {
        return List.of(
                RouteRule.signedIn(HttpMethod.GET, "/cells/{cell}/phrasebook"),
                RouteRule.signedIn(HttpMethod.POST, "/cells/{cell}/phrasebook"),
                RouteRule.signedIn(HttpMethod.GET, "/cells/{cell}/phrasebook/versions/{number}"),
                RouteRule.roles(HttpMethod.GET, "/cells/{cell}/phrasebook/edit", TECHNICIAN, INSTRUCTOR),
                RouteRule.roles(HttpMethod.POST, "/cells/{cell}/phrasebook/edit", TECHNICIAN, INSTRUCTOR));
    }
}
