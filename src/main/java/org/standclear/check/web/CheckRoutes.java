package org.standclear.check.web;

import static org.standclear.platform.security.Role.INSTRUCTOR;
import static org.standclear.platform.security.Role.STUDENT;
import static org.standclear.platform.security.Role.TECHNICIAN;

import java.util.List;
import java.util.Set;
import org.springframework.http.HttpMethod;
import org.springframework.stereotype.Component;
import org.standclear.platform.security.Role;
import org.standclear.platform.security.RouteRule;
import org.standclear.platform.security.RouteRules;

/** Students and lab staff check programs; whose program it is, is asked again for each one. */
@Component
class CheckRoutes implements RouteRules {

    /** Who checks programs in a lab. */
    static final Set<Role> WHO_CHECKS = Set.of(STUDENT, TECHNICIAN, INSTRUCTOR);

    @Override
    public List<RouteRule> rules() {
        return List.of(
                own(HttpMethod.POST, "/api/checks"),
                RouteRule.anyone(HttpMethod.GET, "/api/openapi.yaml"),
                own(HttpMethod.GET, "/check"),
                own(HttpMethod.POST, "/check"),
                own(HttpMethod.GET, "/checks/{answer}"),
                own(HttpMethod.GET, "/checks/{answer}/answer.json"),
                own(HttpMethod.GET, "/checks/{answer}/play.json"),
                own(HttpMethod.GET, "/programs"),
                own(HttpMethod.GET, "/programs/upload"),
                own(HttpMethod.POST, "/programs/upload"),
                own(HttpMethod.GET, "/programs/{program}"));
    }

    private static RouteRule own(HttpMethod method, String pattern) {
        return RouteRule.roles(method, pattern, WHO_CHECKS.toArray(Role[]::new));
    }
}
