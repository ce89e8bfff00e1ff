package org.standclear.retention.web;

import static org.springframework.http.HttpMethod.GET;
import static org.springframework.http.HttpMethod.POST;
import static org.standclear.platform.security.Role.ADMINISTRATOR;
import static org.standclear.platform.security.Role.INSTRUCTOR;
import static org.standclear.platform.security.Role.REVIEWER;
import static org.standclear.platform.security.RouteRule.roles;

import java.util.List;
import org.springframework.stereotype.Component;
import org.standclear.platform.security.RouteRule;
import org.standclear.platform.security.RouteRules;

/** The administrator keeps and disposes; instructors place holds too; the safety reviewer reads. */
@Component
class RetentionRoutes implements RouteRules {

    @Override
    public List<RouteRule> rules() {
        return List.of(
                roles(GET, "/retention", ADMINISTRATOR, INSTRUCTOR, REVIEWER),
                roles(GET, "/retention/rules/{kind}", ADMINISTRATOR),
                roles(GET, "/retention/rules/{kind}/confirm", ADMINISTRATOR),
                roles(POST, "/retention/rules/{kind}", ADMINISTRATOR),
                roles(GET, "/retention/wait", ADMINISTRATOR),
                roles(POST, "/retention/wait", ADMINISTRATOR),
                roles(GET, "/retention/shortenings/{shortening}", ADMINISTRATOR, INSTRUCTOR, REVIEWER),
                roles(POST, "/retention/shortenings/{shortening}/approve", ADMINISTRATOR, INSTRUCTOR),
                roles(POST, "/retention/shortenings/{shortening}/reject", ADMINISTRATOR, INSTRUCTOR),
                roles(GET, "/retention/holds", ADMINISTRATOR, INSTRUCTOR, REVIEWER),
                roles(POST, "/retention/holds", ADMINISTRATOR, INSTRUCTOR),
                roles(GET, "/retention/holds/new", ADMINISTRATOR, INSTRUCTOR),
                roles(GET, "/retention/holds/{hold}/lift", ADMINISTRATOR, INSTRUCTOR),
                roles(POST, "/retention/holds/{hold}/lift", ADMINISTRATOR, INSTRUCTOR),
                roles(GET, "/retention/due", ADMINISTRATOR, INSTRUCTOR, REVIEWER),
                roles(POST, "/retention/due", ADMINISTRATOR),
                roles(GET, "/retention/due/confirm", ADMINISTRATOR),
                roles(GET, "/retention/lists/{list}", ADMINISTRATOR, INSTRUCTOR, REVIEWER),
                roles(GET, "/retention/lists/{list}/stop", ADMINISTRATOR, INSTRUCTOR),
                roles(POST, "/retention/lists/{list}/stop", ADMINISTRATOR, INSTRUCTOR),
                roles(GET, "/retention/kinds/{kind}", ADMINISTRATOR, INSTRUCTOR, REVIEWER),
                roles(GET, "/retention/log", ADMINISTRATOR, REVIEWER),
                roles(GET, "/retention/log.csv", ADMINISTRATOR, REVIEWER),
                roles(GET, "/retention/access", ADMINISTRATOR, REVIEWER));
    }
}
