package org.standclear.program.web;

import java.util.List;
import org.springframework.http.HttpMethod;
import org.springframework.stereotype.Component;
import org.standclear.platform.security.Role;
import org.standclear.platform.security.RouteRule;
import org.standclear.platform.security.RouteRules;

/** Students and lab staff fetch files; whose file it is, is asked again for each one. */
@Component
class ProgramRoutes implements RouteRules {

    @Override
    public List<RouteRule> rules() {
        return List.of(RouteRule.roles(
                HttpMethod.GET, "/revisions/{revision}/file", Role.STUDENT, Role.TECHNICIAN, Role.INSTRUCTOR));
    }
}
