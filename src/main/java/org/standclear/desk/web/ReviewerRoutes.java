package org.standclear.desk.web;

import java.util.List;
import org.springframework.http.HttpMethod;
import org.springframework.stereotype.Component;
import org.standclear.platform.security.Role;
import org.standclear.platform.security.RouteRule;
import org.standclear.platform.security.RouteRules;

/** Who may use the safety reviewer's start page. */
@Component
class ReviewerRoutes implements RouteRules {

    @Override
    public List<RouteRule> rules() {
        return List.of(RouteRule.roles(HttpMethod.GET, "/reviewer", Role.REVIEWER));
    }
}
