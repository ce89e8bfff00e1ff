package org.standclear.cell.web;

import static org.standclear.platform.security.Role.INSTRUCTOR;
import static org.standclear.platform.security.Role.REVIEWER;
import static org.standclear.platform.security.Role.STUDENT;
import static org.standclear.platform.security.Role.TECHNICIAN;

import java.util.List;
import org.springframework.http.HttpMethod;
import org.springframework.stereotype.Component;
import org.standclear.platform.security.RouteRule;
import org.standclear.platform.security.RouteRules;

/** Everybody signed in sees cells and may stop them; staff test and propose; instructors and reviewers approve. */
@Component
class CellRoutes implements RouteRules {

    @Override
    public List<RouteRule> rules() {
        return List.of(
                RouteRule.signedIn(HttpMethod.GET, "/cells"),
                RouteRule.roles(HttpMethod.GET, "/cells/new", TECHNICIAN, INSTRUCTOR),
                RouteRule.roles(HttpMethod.POST, "/cells/new", TECHNICIAN, INSTRUCTOR),
                RouteRule.roles(HttpMethod.GET, "/cells/proposals/{proposal}", TECHNICIAN, INSTRUCTOR, REVIEWER),
                RouteRule.roles(HttpMethod.POST, "/cells/proposals/{proposal}/approve", INSTRUCTOR, REVIEWER),
                RouteRule.roles(
                        HttpMethod.POST, "/cells/proposals/{proposal}/reject", TECHNICIAN, INSTRUCTOR, REVIEWER),
                RouteRule.roles(HttpMethod.GET, "/cells/duty-defaults", TECHNICIAN, INSTRUCTOR, REVIEWER),
                RouteRule.roles(HttpMethod.POST, "/cells/duty-defaults", INSTRUCTOR),
                RouteRule.signedIn(HttpMethod.GET, "/cells/{cell}"),
                RouteRule.signedIn(HttpMethod.GET, "/cells/{cell}/versions/{number}"),
                RouteRule.signedIn(HttpMethod.GET, "/cells/{cell}/versions/{number}/file"),
                RouteRule.roles(HttpMethod.GET, "/cells/{cell}/propose", TECHNICIAN, INSTRUCTOR),
                RouteRule.roles(HttpMethod.POST, "/cells/{cell}/propose", TECHNICIAN, INSTRUCTOR),
                RouteRule.signedIn(HttpMethod.GET, "/cells/{cell}/stop"),
                RouteRule.signedIn(HttpMethod.POST, "/cells/{cell}/stop"),
                RouteRule.roles(HttpMethod.GET, "/cells/{cell}/day-test", TECHNICIAN, INSTRUCTOR),
                RouteRule.roles(HttpMethod.POST, "/cells/{cell}/day-test", TECHNICIAN, INSTRUCTOR),
                RouteRule.roles(HttpMethod.GET, "/cells/{cell}/tool-reading", STUDENT, TECHNICIAN, INSTRUCTOR),
                RouteRule.roles(HttpMethod.POST, "/cells/{cell}/tool-reading", STUDENT, TECHNICIAN, INSTRUCTOR),
                RouteRule.roles(HttpMethod.GET, "/cells/{cell}/return", TECHNICIAN, INSTRUCTOR),
                RouteRule.roles(HttpMethod.POST, "/cells/{cell}/return", TECHNICIAN, INSTRUCTOR),
                RouteRule.roles(HttpMethod.GET, "/cells/{cell}/duties", TECHNICIAN, INSTRUCTOR, REVIEWER),
                RouteRule.roles(HttpMethod.POST, "/cells/{cell}/duties", TECHNICIAN, INSTRUCTOR, REVIEWER),
                RouteRule.roles(HttpMethod.POST, "/cells/{cell}/duties/interval", INSTRUCTOR),
                RouteRule.roles(HttpMethod.GET, "/cells/{cell}/lockout", TECHNICIAN, INSTRUCTOR),
                RouteRule.roles(HttpMethod.POST, "/cells/{cell}/lockout", TECHNICIAN, INSTRUCTOR),
                RouteRule.roles(HttpMethod.POST, "/cells/{cell}/lockout/{tag}/remove", TECHNICIAN, INSTRUCTOR),
                RouteRule.signedIn(HttpMethod.GET, "/cells/{cell}/tags/{tag}"),
                RouteRule.roles(HttpMethod.GET, "/cells/{cell}/features", TECHNICIAN, INSTRUCTOR),
                RouteRule.roles(HttpMethod.POST, "/cells/{cell}/features", TECHNICIAN, INSTRUCTOR),
                RouteRule.roles(HttpMethod.GET, "/cells/{cell}/features/{feature}/remove", TECHNICIAN, INSTRUCTOR),
                RouteRule.roles(HttpMethod.POST, "/cells/{cell}/features/{feature}/remove", TECHNICIAN, INSTRUCTOR),
                RouteRule.roles(HttpMethod.GET, "/cells/{cell}/restriction", INSTRUCTOR),
                RouteRule.roles(HttpMethod.POST, "/cells/{cell}/restriction", INSTRUCTOR));
    }
}
