package org.standclear.platform.security;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.time.Clock;
import java.util.Set;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.core.annotation.Order;
import org.springframework.http.HttpHeaders;
import org.springframework.http.HttpStatus;
import org.springframework.security.config.annotation.web.builders.HttpSecurity;
import org.springframework.security.config.http.SessionCreationPolicy;
import org.springframework.security.web.SecurityFilterChain;
import org.springframework.security.web.access.intercept.AuthorizationFilter;
import org.standclear.platform.web.Problems;

/** What programs call: no session and no form, a personal token with every request, errors as problem details. */
@Configuration(proxyBeanMethods = false)
class ApiSecurity {

    @Bean
    @Order(0)
    SecurityFilterChain api(
            HttpSecurity http,
            Routes rules,
            TokenHolders holders,
            AccountStates accounts,
            LabOfRequest labs,
            Clock clock)
            throws Exception {
        http.securityMatcher(Problems.PATH + "**");
        http.authorizeHttpRequests(routes -> {
            rules.rules().stream()
                    .filter(rule -> rule.pattern().startsWith(Problems.PATH))
                    .forEach(rule -> SecurityConfiguration.add(routes, rule));
            routes.anyRequest().denyAll();
        });
        // a token is sent by a program, never by a browser on its own, so no other page can make one send it
        http.csrf(csrf -> csrf.disable());
        http.logout(out -> out.disable());
        http.requestCache(cache -> cache.disable());
        http.sessionManagement(session -> session.sessionCreationPolicy(SessionCreationPolicy.STATELESS));
        http.exceptionHandling(
                errors -> errors.authenticationEntryPoint((request, response, error) -> withoutToken(request, response))
                        .accessDeniedHandler((request, response, error) -> refused(rules, request, response)));
        http.addFilterBefore(new TokenSignIn(holders, clock), AuthorizationFilter.class);
        http.addFilterBefore(new AccountGuard(accounts, labs), AuthorizationFilter.class);
        http.addFilterAfter(new OtherLabs(), AuthorizationFilter.class);
        http.headers(SecurityConfiguration::strict);
        return http.build();
    }

    private static void withoutToken(HttpServletRequest request, HttpServletResponse response) throws IOException {
        boolean unknown = request.getAttribute(TokenSignIn.UNKNOWN) != null;
        response.setHeader(HttpHeaders.WWW_AUTHENTICATE, unknown ? "Bearer error=\"invalid_token\"" : "Bearer");
        Problems.write(
                response,
                HttpStatus.UNAUTHORIZED,
                unknown
                        ? "This token does not count: it is mistyped, was revoked or has expired."
                        : "Send a personal token: \"Authorization: Bearer ...\". My page makes one.");
    }

    private static void refused(Routes rules, HttpServletRequest request, HttpServletResponse response)
            throws IOException {
        Set<String> methods = rules.methodsFor(request);
        if (methods.isEmpty()) {
            Problems.write(response, HttpStatus.NOT_FOUND, "There is nothing at this address.");
        } else if (methods.contains(request.getMethod())) {
            Problems.write(response, HttpStatus.FORBIDDEN, "The token's owner may not do this.");
        } else {
            response.setHeader(HttpHeaders.ALLOW, String.join(", ", methods));
            Problems.write(response, HttpStatus.METHOD_NOT_ALLOWED, "Not with " + request.getMethod() + ": see Allow.");
        }
    }
}
