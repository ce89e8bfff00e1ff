package org.standclear.platform.security;

import java.util.Set;
import org.springframework.http.HttpMethod;

/**
 * Who may use one route. A route without a rule is refused for everybody.
 *
 * @param pattern a path pattern as the handler mapping writes it, for example {@code /cells/{cell}}
 * @param roles who may; ignored unless access is {@link Access#ROLES}
 */
public record RouteRule(HttpMethod method, String pattern, Access access, Set<Role> roles) {

    /** How wide a route stands open. */
    public enum Access {
        ANYONE,
        SIGNED_IN,
        ROLES
    }

    public RouteRule {
        roles = Set.copyOf(roles);
        if (access == Access.ROLES && roles.isEmpty()) {
            throw new IllegalArgumentException("a rule for roles names at least one: " + method + " " + pattern);
        }
    }

    /** Open to people who have not signed in. */
    public static RouteRule anyone(HttpMethod method, String pattern) {
        return new RouteRule(method, pattern, Access.ANYONE, Set.of());
    }

    /** Open to everybody with an account, shared bench screens included. */
    public static RouteRule signedIn(HttpMethod method, String pattern) {
        return new RouteRule(method, pattern, Access.SIGNED_IN, Set.of());
    }

    /** Open to accounts with one of the roles. */
    public static RouteRule roles(HttpMethod method, String pattern, Role... roles) {
        return new RouteRule(method, pattern, Access.ROLES, Set.of(roles));
    }
}
