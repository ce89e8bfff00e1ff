package org.standclear.message.web;

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

/** Everybody reads their own messages; a shared screen has none. */
@Component
class MessageRoutes implements RouteRules {

    private static final Role[] PEOPLE = {STUDENT, TECHNICIAN, INSTRUCTOR, REVIEWER, ADMINISTRATOR};

    @Override
    public List<RouteRule> rules() {
        return List.of(
                RouteRule.roles(HttpMethod.GET, "/me/messages", PEOPLE),
                RouteRule.roles(HttpMethod.POST, "/me/messages", PEOPLE));
    }
}
