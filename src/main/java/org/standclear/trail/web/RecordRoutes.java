package org.standclear.trail.web;

import java.util.List;
import org.springframework.http.HttpMethod;
import org.springframework.stereotype.Component;
import org.standclear.platform.security.Role;
import org.standclear.platform.security.RouteRule;
import org.standclear.platform.security.RouteRules;

/** Who may read the record: those who answer for the lab. */
@Component
class RecordRoutes implements RouteRules {

    private static final Role[] READERS = {Role.REVIEWER, Role.INSTRUCTOR, Role.ADMINISTRATOR, Role.TECHNICIAN};

    @Override
    public List<RouteRule> rules() {
        return List.of(
                RouteRule.roles(HttpMethod.GET, "/record", READERS),
                RouteRule.roles(HttpMethod.GET, "/record/entries.csv", READERS),
                RouteRule.roles(HttpMethod.GET, "/record/entries.jsonl", READERS),
                RouteRule.roles(HttpMethod.GET, "/record/verify", READERS),
                RouteRule.roles(HttpMethod.POST, "/record/verify", READERS));
    }
}
