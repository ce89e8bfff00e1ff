package org.standclear.people.web;

import static org.springframework.http.HttpMethod.GET;
import static org.springframework.http.HttpMethod.POST;
import static org.standclear.platform.security.RouteRule.roles;

import java.util.List;
import org.springframework.core.annotation.Order;
import org.springframework.stereotype.Component;
import org.standclear.platform.security.Role;
import org.standclear.platform.security.RouteRule;
import org.standclear.platform.security.RouteRules;

/** Who may send rosters; asked before the rules for one person, whose pattern would match these paths too. */
@Component
@Order(0)
class RosterRoutes implements RouteRules {

    private static final Role[] LEADERS = {Role.INSTRUCTOR, Role.ADMINISTRATOR};

    @Override
    public List<RouteRule> rules() {
        return List.of(
                roles(GET, "/people/rosters", LEADERS),
                roles(POST, "/people/rosters", LEADERS),
                roles(GET, "/people/rosters/{roster}", LEADERS),
                roles(POST, "/people/rosters/{roster}/apply", LEADERS),
                roles(POST, "/people/rosters/{roster}/undo", LEADERS));
    }
}
