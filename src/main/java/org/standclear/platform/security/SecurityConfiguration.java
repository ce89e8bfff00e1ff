package org.standclear.platform.security;

import java.util.List;
import org.springframework.boot.security.autoconfigure.web.servlet.PathRequest;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.http.HttpMethod;
import org.springframework.security.config.annotation.web.builders.HttpSecurity;
import org.springframework.security.config.annotation.web.configurers.AuthorizeHttpRequestsConfigurer;
import org.springframework.security.crypto.argon2.Argon2PasswordEncoder;
import org.springframework.security.crypto.password.PasswordEncoder;
import org.springframework.security.web.SecurityFilterChain;
import org.springframework.security.web.header.writers.ReferrerPolicyHeaderWriter.ReferrerPolicy;
import org.springframework.security.web.servlet.util.matcher.PathPatternRequestMatcher;

/** Puts the features' route rules into one chain that denies whatever no rule names. */
@Configuration(proxyBeanMethods = false)
class SecurityConfiguration {

    private static final String CONTENT_POLICY =
            "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self'; "
                    + "font-src 'self'; connect-src 'self'; form-action 'self'; base-uri 'none'; frame-ancestors 'none'";

    @Bean
    PasswordEncoder passwordEncoder() {
        return Argon2PasswordEncoder.defaultsForSpringSecurity_v5_8();
    }

    @Bean
    SecurityFilterChain pages(HttpSecurity http, List<RouteRules> features) throws Exception {
        http.authorizeHttpRequests(routes -> {
            routes.requestMatchers(PathRequest.toStaticResources().atCommonLocations())
                    .permitAll();
            routes.requestMatchers(HttpMethod.GET, "/fonts/**", "/favicon.svg").permitAll();
            routes.requestMatchers("/error").permitAll();
            features.forEach(feature -> feature.rules().forEach(rule -> add(routes, rule)));
            routes.anyRequest().denyAll();
        });
        http.formLogin(form -> form.loginPage("/sign-in")
                .loginProcessingUrl("/sign-in")
                .defaultSuccessUrl("/")
                .failureUrl("/sign-in?refused")
                .permitAll());
        http.logout(out -> out.logoutUrl("/sign-out").logoutSuccessUrl("/sign-in?out"));
        http.headers(headers -> headers.contentSecurityPolicy(policy -> policy.policyDirectives(CONTENT_POLICY))
                .referrerPolicy(policy -> policy.policy(ReferrerPolicy.SAME_ORIGIN))
                .permissionsPolicyHeader(policy -> policy.policy("camera=(), microphone=(), geolocation=()")));
        return http.build();
    }

    private static void add(
            AuthorizeHttpRequestsConfigurer<HttpSecurity>.AuthorizationManagerRequestMatcherRegistry routes,
            RouteRule rule) {
        var route =
                routes.requestMatchers(PathPatternRequestMatcher.withDefaults().matcher(rule.method(), rule.pattern()));
        switch (rule.access()) {
            case ANYONE -> route.permitAll();
            case SIGNED_IN -> route.authenticated();
            case ROLES -> route.hasAnyRole(rule.roles().stream().map(Role::name).toArray(String[]::new));
        }
    }
}
