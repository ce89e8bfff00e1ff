package org.standclear.platform.security;

import jakarta.servlet.FilterChain;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.time.Clock;
import java.time.Duration;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpHeaders;
import org.springframework.http.HttpStatus;
import org.springframework.security.authentication.UsernamePasswordAuthenticationToken;
import org.springframework.security.core.context.SecurityContext;
import org.springframework.security.core.context.SecurityContextHolder;
import org.springframework.web.filter.OncePerRequestFilter;
import org.standclear.platform.web.Problems;

/** Lets a request act for the owner of the token that it carries, for this one request. */
class TokenSignIn extends OncePerRequestFilter {

    /** Set on a request that carries a token which does not count. */
    static final String UNKNOWN = TokenSignIn.class.getName() + ".unknown";

    private static final String SCHEME = "Bearer ";

    private final TokenHolders holders;
    private final Clock clock;

    TokenSignIn(TokenHolders holders, Clock clock) {
        this.holders = holders;
        this.clock = clock;
    }

    @Override
    protected void doFilterInternal(HttpServletRequest request, HttpServletResponse response, FilterChain chain)
            throws ServletException, IOException {
        String token = token(request);
        if (token == null) {
            chain.doFilter(request, response);
            return;
        }
        TokenHolders.Found found = holders.find(token, request.getRemoteAddr());
        if (found instanceof TokenHolders.Found.Paused paused) {
            long seconds = Math.max(
                    1, Duration.between(clock.instant(), paused.until()).toSeconds());
            response.setHeader(HttpHeaders.RETRY_AFTER, String.valueOf(seconds));
            Problems.write(
                    response,
                    HttpStatus.TOO_MANY_REQUESTS,
                    "Too many requests with tokens that do not count came from this address.");
            return;
        }
        if (found instanceof TokenHolders.Found.Known known) {
            actAs(known.person());
        } else {
            request.setAttribute(UNKNOWN, true);
        }
        chain.doFilter(request, response);
    }

    private static @Nullable String token(HttpServletRequest request) {
        String header = request.getHeader(HttpHeaders.AUTHORIZATION);
        return header != null && header.regionMatches(true, 0, SCHEME, 0, SCHEME.length())
                ? header.substring(SCHEME.length()).strip()
                : null;
    }

    private static void actAs(SignedInPerson person) {
        SecurityContext context = SecurityContextHolder.createEmptyContext();
        context.setAuthentication(
                UsernamePasswordAuthenticationToken.authenticated(person, null, person.getAuthorities()));
        SecurityContextHolder.setContext(context);
    }
}
