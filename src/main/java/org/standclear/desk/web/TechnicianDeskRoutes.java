package org.standclear.desk.web;

import java.util.List;
import org.springframework.http.HttpMethod;
import org.springframework.stereotype.Component;
import org.standclear.platform.security.Role;
import org.standclear.platform.security.RouteRule;
import org.standclear.platform.security.RouteRules;

/** Who may use the technician's desk and the dates of what falls due. */
@Component
class TechnicianDeskRoutes implements RouteRules {

    @Override
    public List<RouteRule> rules() {
        return List.of(
                RouteRule.roles(HttpMethod.GET, "/desk", Role.TECHNICIAN, Role.INSTRUCTOR),
                RouteRule.roles(HttpMethod.GET, "/due", Role.TECHNICIAN, Role.INSTRUCTOR, Role.REVIEWER),
                RouteRule.roles(HttpMethod.GET, "/due.ics", Role.TECHNICIAN, Role.INSTRUCTOR, Role.REVIEWER));
    }
}
