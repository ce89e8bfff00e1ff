package org.standclear.incident.web;

import static org.standclear.platform.security.Role.ADMINISTRATOR;
import static org.standclear.platform.security.Role.INSTRUCTOR;
import static org.standclear.platform.security.Role.REVIEWER;
import static org.standclear.platform.security.Role.STUDENT;
import static org.standclear.platform.security.Role.TECHNICIAN;

import java.util.List;
import org.springframework.http.HttpMethod;
import org.springframework.stereotype.Component;
import org.standclear.platform.security.Role;
import org.standclear.platform.security.RouteRule;
import org.standclear.platform.security.RouteRules;

/** Anybody signed in reports; staff and the safety reviewer read; instructors and the safety reviewer review. */
@Component
class IncidentRoutes implements RouteRules {

    private static final Role[] PEOPLE = {STUDENT, TECHNICIAN, INSTRUCTOR, REVIEWER, ADMINISTRATOR};
    private static final Role[] OWNERS = {TECHNICIAN, INSTRUCTOR, REVIEWER};
    private static final Role[] REVIEWERS = {INSTRUCTOR, REVIEWER};

    @Override
    public List<RouteRule> rules() {
        return List.of(
                RouteRule.signedIn(HttpMethod.GET, "/incidents/near-miss"),
                RouteRule.signedIn(HttpMethod.POST, "/incidents/near-miss"),
                RouteRule.signedIn(HttpMethod.GET, "/incidents/receipts"),
                RouteRule.signedIn(HttpMethod.GET, "/incidents/receipts/{receipt}"),
                RouteRule.roles(HttpMethod.GET, "/incidents", PEOPLE),
                RouteRule.roles(HttpMethod.GET, "/incidents.csv", OWNERS),
                RouteRule.roles(HttpMethod.GET, "/incidents/report", PEOPLE),
                RouteRule.roles(HttpMethod.POST, "/incidents/report", PEOPLE),
                RouteRule.roles(HttpMethod.GET, "/incidents/{incident}", PEOPLE),
                RouteRule.roles(HttpMethod.GET, "/incidents/{incident}/form", PEOPLE),
                RouteRule.roles(HttpMethod.POST, "/incidents/{incident}/form", PEOPLE),
                RouteRule.roles(HttpMethod.POST, "/incidents/{incident}/statements", PEOPLE),
                RouteRule.roles(HttpMethod.POST, "/incidents/{incident}/photos", PEOPLE),
                RouteRule.roles(HttpMethod.GET, "/incidents/{incident}/photos/{photo}", PEOPLE),
                RouteRule.roles(HttpMethod.GET, "/incidents/{incident}/review", REVIEWERS),
                RouteRule.roles(HttpMethod.POST, "/incidents/{incident}/review", REVIEWERS),
                RouteRule.roles(HttpMethod.POST, "/incidents/{incident}/class", REVIEWERS),
                RouteRule.roles(HttpMethod.POST, "/incidents/{incident}/people", REVIEWERS),
                RouteRule.roles(HttpMethod.POST, "/incidents/{incident}/causes", REVIEWERS),
                RouteRule.roles(HttpMethod.POST, "/incidents/{incident}/causes/{cause}/strike", REVIEWERS),
                RouteRule.roles(HttpMethod.POST, "/incidents/{incident}/actions", REVIEWERS),
                RouteRule.roles(HttpMethod.POST, "/incidents/{incident}/answers", REVIEWERS),
                RouteRule.roles(HttpMethod.POST, "/incidents/{incident}/risk-reviews", REVIEWERS),
                RouteRule.roles(HttpMethod.POST, "/incidents/{incident}/restart", REVIEWERS),
                RouteRule.roles(HttpMethod.GET, "/incidents/{incident}/close", REVIEWERS),
                RouteRule.roles(HttpMethod.POST, "/incidents/{incident}/close", REVIEWERS),
                RouteRule.roles(HttpMethod.GET, "/incidents/{incident}/medical", REVIEWERS),
                RouteRule.roles(HttpMethod.POST, "/incidents/{incident}/medical", REVIEWERS),
                RouteRule.roles(HttpMethod.GET, "/incident-numbers", OWNERS),
                RouteRule.roles(HttpMethod.POST, "/incident-numbers", INSTRUCTOR),
                RouteRule.roles(HttpMethod.GET, "/actions", OWNERS),
                RouteRule.roles(HttpMethod.POST, "/actions/{action}/done", OWNERS),
                RouteRule.roles(HttpMethod.POST, "/actions/{action}/check", REVIEWERS));
    }
}
