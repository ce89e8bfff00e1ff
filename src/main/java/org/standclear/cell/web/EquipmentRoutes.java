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

/** Staff keep the register and change what is at a cell; whoever is authorised there may be the second to read a tool. */
@Component
class EquipmentRoutes implements RouteRules {

    @Override
    public List<RouteRule> rules() {
        return List.of(
                RouteRule.roles(HttpMethod.GET, "/equipment", TECHNICIAN, INSTRUCTOR, REVIEWER),
                RouteRule.roles(HttpMethod.POST, "/equipment", TECHNICIAN, INSTRUCTOR),
                RouteRule.roles(HttpMethod.POST, "/equipment/{item}/approve", TECHNICIAN, INSTRUCTOR, REVIEWER),
                RouteRule.roles(HttpMethod.GET, "/cells/{cell}/tool-change", STUDENT, TECHNICIAN, INSTRUCTOR),
                RouteRule.roles(HttpMethod.POST, "/cells/{cell}/tool-change", TECHNICIAN, INSTRUCTOR),
                RouteRule.roles(HttpMethod.POST, "/cells/{cell}/tool-change/reading", STUDENT, TECHNICIAN, INSTRUCTOR),
                RouteRule.roles(HttpMethod.GET, "/cells/{cell}/parts", TECHNICIAN, INSTRUCTOR),
                RouteRule.roles(HttpMethod.POST, "/cells/{cell}/parts", TECHNICIAN, INSTRUCTOR));
    }
}
