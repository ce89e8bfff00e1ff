package org.standclear.desk.web;

import java.util.List;
import org.springframework.http.HttpMethod;
import org.springframework.stereotype.Component;
import org.standclear.platform.security.Role;
import org.standclear.platform.security.RouteRule;
import org.standclear.platform.security.RouteRules;

/** Who may use the technician's desk. */
@Component
class TechnicianDeskRoutes implements RouteRules {

    @Override
    public List<RouteRule> rules() {
        return List.of(RouteRule.roles(HttpMethod.GET, "/desk", Role.TECHNICIAN, Role.INSTRUCTOR));
    }
}
