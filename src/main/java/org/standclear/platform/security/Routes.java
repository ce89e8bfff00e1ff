package org.standclear.platform.security;

import jakarta.servlet.http.HttpServletRequest;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.springframework.http.HttpMethod;
import org.springframework.http.server.PathContainer;
import org.springframework.stereotype.Component;
import org.springframework.web.util.ServletRequestPathUtils;
import org.springframework.web.util.pattern.PathPattern;
import org.springframework.web.util.pattern.PathPatternParser;

/** All rules of all features, and what a path that was refused is good for. */
@Component
class Routes {

    private final List<RouteRule> rules;
    private final List<PathPattern> patterns;

    Routes(List<RouteRules> features) {
        this.rules =
                features.stream().flatMap(feature -> feature.rules().stream()).toList();
        this.patterns = rules.stream()
                .map(rule -> PathPatternParser.defaultInstance.parse(rule.pattern()))
                .toList();
    }

    List<RouteRule> rules() {
        return rules;
    }

    /** The roles that the rule of the request's route names; empty where there is no rule or it names none. */
    Set<Role> rolesFor(HttpServletRequest request) {
        PathContainer path = ServletRequestPathUtils.parse(request).pathWithinApplication();
        for (int i = 0; i < rules.size(); i++) {
            if (rules.get(i).method().matches(request.getMethod())
                    && patterns.get(i).matches(path)) {
                return rules.get(i).roles();
            }
        }
        return Set.of();
    }

    /** The methods that some rule names for the path of the request; empty when no rule knows the path. */
    Set<String> methodsFor(HttpServletRequest request) {
        PathContainer path = ServletRequestPathUtils.parse(request).pathWithinApplication();
        Set<String> methods = new TreeSet<>();
        for (int i = 0; i < rules.size(); i++) {
            if (patterns.get(i).matches(path)) {
                methods.add(rules.get(i).method().name());
            }
        }
        if (methods.contains(HttpMethod.GET.name())) {
            methods.add(HttpMethod.HEAD.name());
        }
        return methods;
    }
}
