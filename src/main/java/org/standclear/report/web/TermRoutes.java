package org.standclear.report.web;

import static org.standclear.platform.security.Role.INSTRUCTOR;
import static org.standclear.platform.security.Role.REVIEWER;
import static org.standclear.platform.security.Role.STUDENT;
import static org.standclear.platform.security.Role.TECHNICIAN;

import java.util.List;
import org.springframework.http.HttpMethod;
import org.springframework.stereotype.Component;
import org.standclear.platform.security.RouteRule;
import org.standclear.platform.security.RouteRules;

/** Terms are read by instructors and the safety reviewer; a run's paper by whoever sees the run. */
@Component
class TermRoutes implements RouteRules {

    @Override
    public List<RouteRule> rules() {
        return List.of(
                RouteRule.roles(HttpMethod.GET, "/report", INSTRUCTOR, REVIEWER),
                RouteRule.roles(HttpMethod.GET, "/report/term.pdf", INSTRUCTOR, REVIEWER),
                RouteRule.roles(HttpMethod.GET, "/report/term.csv", INSTRUCTOR, REVIEWER),
                RouteRule.roles(HttpMethod.GET, "/report/runs/{run}", TECHNICIAN, INSTRUCTOR, REVIEWER),
                RouteRule.roles(
                        HttpMethod.GET, "/report/runs/{run}/run.pdf", STUDENT, TECHNICIAN, INSTRUCTOR, REVIEWER),
                RouteRule.roles(HttpMethod.GET, "/me/record", STUDENT, TECHNICIAN, INSTRUCTOR),
                RouteRule.roles(HttpMethod.POST, "/me/record", STUDENT, TECHNICIAN, INSTRUCTOR),
                RouteRule.roles(HttpMethod.GET, "/me/record.csv", STUDENT, TECHNICIAN, INSTRUCTOR),
                RouteRule.roles(HttpMethod.GET, "/me/record.json", STUDENT, TECHNICIAN, INSTRUCTOR),
                RouteRule.roles(HttpMethod.GET, "/report/questions", INSTRUCTOR),
                RouteRule.roles(HttpMethod.POST, "/report/questions/{question}", INSTRUCTOR),
                RouteRule.roles(HttpMethod.GET, "/exceptions", INSTRUCTOR),
                RouteRule.roles(HttpMethod.POST, "/exceptions", INSTRUCTOR),
                RouteRule.roles(HttpMethod.GET, "/exceptions/rules", INSTRUCTOR),
                RouteRule.roles(HttpMethod.POST, "/exceptions/rules", INSTRUCTOR));
    }
}
