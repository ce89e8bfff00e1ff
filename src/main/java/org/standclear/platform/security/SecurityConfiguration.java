package org.standclear.platform.security;

import java.util.List;
import org.springframework.boot.security.autoconfigure.web.servlet.PathRequest;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.core.annotation.Order;
import org.springframework.http.HttpMethod;
import org.springframework.security.config.annotation.web.builders.HttpSecurity;
import org.springframework.security.config.annotation.web.configurers.AuthorizeHttpRequestsConfigurer;
import org.springframework.security.config.annotation.web.configurers.HeadersConfigurer;
import org.springframework.security.crypto.argon2.Argon2PasswordEncoder;
import org.springframework.security.crypto.password.PasswordEncoder;
import org.springframework.security.web.SecurityFilterChain;
import org.springframework.security.web.access.intercept.AuthorizationFilter;
import org.springframework.security.web.header.writers.CrossOriginOpenerPolicyHeaderWriter.CrossOriginOpenerPolicy;
import org.springframework.security.web.header.writers.CrossOriginResourcePolicyHeaderWriter.CrossOriginResourcePolicy;
import org.springframework.security.web.header.writers.ReferrerPolicyHeaderWriter.ReferrerPolicy;
import org.springframework.security.web.savedrequest.NullRequestCache;
import org.springframework.security.web.servlet.util.matcher.PathPatternRequestMatcher;
import org.springframework.security.web.util.matcher.OrRequestMatcher;

/** Puts the features' route rules into one chain that denies whatever no rule names. */
@Configuration(proxyBeanMethods = false)
class SecurityConfiguration {

    private static final String CONTENT_POLICY =
            "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self'; "
                    + "font-src 'self'; connect-src 'self'; form-action 'self'; base-uri 'none'; frame-ancestors 'none'";

    @Bean
    PasswordEncoder passwordEncoder() {
        int atOnce = Math.max(2, Runtime.getRuntime().availableProcessors());
        return new TurnTakingPasswordEncoder(Argon2PasswordEncoder.defaultsForSpringSecurity_v5_8(), atOnce);
    }

    /** Style sheets, scripts, letters and pictures: the same for everybody, so no session is read for them. */
    @Bean
    @Order(1)
    SecurityFilterChain files(HttpSecurity http) throws Exception {
        PathPatternRequestMatcher.Builder path = PathPatternRequestMatcher.withDefaults();
        http.securityMatcher(new OrRequestMatcher(
                PathRequest.toStaticResources().atCommonLocations(),
                path.matcher(HttpMethod.GET, "/fonts/**"),
                path.matcher(HttpMethod.GET, "/favicon.svg")));
        http.authorizeHttpRequests(routes -> {
            routes.requestMatchers(HttpMethod.GET, "/**").permitAll();
            routes.requestMatchers(HttpMethod.HEAD, "/**").permitAll();
            routes.anyRequest().denyAll();
        });
        http.requestCache(cache -> cache.disable());
        http.securityContext(context -> context.disable());
        http.sessionManagement(session -> session.disable());
        http.headers(SecurityConfiguration::strict);
        http.headers(headers -> headers.cacheControl(cache -> cache.disable()));
        return http.build();
    }

    @Bean
    @Order(2)
    SecurityFilterChain pages(
            HttpSecurity http,
            Routes rules,
            RefusedRequests refused,
            SignInAnswers answers,
            AccountStates accounts,
            LabOfRequest labs)
            throws Exception {
        http.authorizeHttpRequests(routes -> {
            routes.requestMatchers("/error").permitAll();
            routes.requestMatchers(HttpMethod.GET, "/actuator/health/**").permitAll();
            rules.rules().forEach(rule -> add(routes, rule));
            routes.anyRequest().denyAll();
        });
        http.formLogin(form -> form.loginPage(RefusedRequests.SIGN_IN)
                .loginProcessingUrl(RefusedRequests.SIGN_IN)
                .successHandler(answers)
                .failureHandler(answers));
        http.logout(out -> out.logoutUrl("/sign-out").logoutSuccessUrl(RefusedRequests.SIGN_IN + "?out"));
        http.requestCache(cache -> cache.requestCache(new NullRequestCache()));
        http.exceptionHandling(
                errors -> errors.authenticationEntryPoint(refused).accessDeniedHandler(refused));
        http.addFilterBefore(new AccountGuard(accounts, labs), AuthorizationFilter.class);
        http.addFilterAfter(new OtherLabs(), AuthorizationFilter.class);
        http.headers(SecurityConfiguration::strict);
        return http.build();
    }

    static void strict(HeadersConfigurer<HttpSecurity> headers) {
        headers.contentSecurityPolicy(policy -> policy.policyDirectives(CONTENT_POLICY))
                .referrerPolicy(policy -> policy.policy(ReferrerPolicy.SAME_ORIGIN))
                .permissionsPolicyHeader(policy -> policy.policy("camera=(), microphone=(), geolocation=()"))
                .crossOriginOpenerPolicy(policy -> policy.policy(CrossOriginOpenerPolicy.SAME_ORIGIN))
                .crossOriginResourcePolicy(policy -> policy.policy(CrossOriginResourcePolicy.SAME_ORIGIN));
    }

    static void add(
            AuthorizeHttpRequestsConfigurer<HttpSecurity>.AuthorizationManagerRequestMatcherRegistry routes,
            RouteRule rule) {
        PathPatternRequestMatcher.Builder path = PathPatternRequestMatcher.withDefaults();
        // whoever may read a page may ask for its headers alone
        List<HttpMethod> methods = rule.method().equals(HttpMethod.GET)
                ? List.of(HttpMethod.GET, HttpMethod.HEAD)
                : List.of(rule.method());
        for (HttpMethod method : methods) {
            var route = routes.requestMatchers(path.matcher(method, rule.pattern()));
            switch (rule.access()) {
                case ANYONE -> route.permitAll();
                case SIGNED_IN -> route.authenticated();
                case ROLES ->
                    route.hasAnyRole(rule.roles().stream().map(Role::name).toArray(String[]::new));
            }
        }
    }
}
