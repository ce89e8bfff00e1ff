package org.standclear.platform.security;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.util.Optional;
import java.util.Set;
import org.springframework.http.HttpMethod;
import org.springframework.security.access.AccessDeniedException;
import org.springframework.security.core.AuthenticationException;
import org.springframework.security.core.context.SecurityContextHolder;
import org.springframework.security.web.AuthenticationEntryPoint;
import org.springframework.security.web.access.AccessDeniedHandler;
import org.springframework.security.web.csrf.CsrfException;
import org.springframework.stereotype.Component;
import org.springframework.web.util.UriComponentsBuilder;

/** Answers what the rules refuse: to the sign-in page and back, or an error page that says which kind it is. */
@Component
class RefusedRequests implements AuthenticationEntryPoint, AccessDeniedHandler {

    static final String SIGN_IN = "/sign-in";

    /** Set on a request whose session was ended because its account was closed. */
    static final String ENDED = RefusedRequests.class.getName() + ".ended";

    private final Routes routes;

    RefusedRequests(Routes routes) {
        this.routes = routes;
    }

    @Override
    public void commence(HttpServletRequest request, HttpServletResponse response, AuthenticationException error)
            throws IOException {
        askToSignIn(request, response);
    }

    @Override
    public void handle(HttpServletRequest request, HttpServletResponse response, AccessDeniedException error)
            throws IOException {
        if (error instanceof CsrfException) {
            withoutCsrfToken(request, response);
            return;
        }
        Set<String> methods = routes.methodsFor(request);
        if (methods.isEmpty()) {
            response.sendError(HttpServletResponse.SC_NOT_FOUND);
        } else if (methods.contains(request.getMethod())) {
            response.sendError(HttpServletResponse.SC_FORBIDDEN);
        } else {
            response.setHeader("Allow", String.join(", ", methods));
            response.sendError(HttpServletResponse.SC_METHOD_NOT_ALLOWED);
        }
    }

    /** A form whose session has ended comes without a token that counts; anybody else's is refused. */
    private void withoutCsrfToken(HttpServletRequest request, HttpServletResponse response) throws IOException {
        var signedIn = SecurityContextHolder.getContext().getAuthentication();
        if (signedIn == null || !signedIn.isAuthenticated()) {
            askToSignIn(request, response);
        } else {
            response.sendError(HttpServletResponse.SC_FORBIDDEN);
        }
    }

    private void askToSignIn(HttpServletRequest request, HttpServletResponse response) throws IOException {
        String address = signInAddress(request);
        if (request.getHeader("HX-Request") != null) {
            // htmx would put the sign-in page into the middle of the one that is open
            response.setHeader("HX-Redirect", address);
            response.setStatus(HttpServletResponse.SC_UNAUTHORIZED);
        } else {
            response.sendRedirect(address);
        }
    }

    private static String signInAddress(HttpServletRequest request) {
        boolean read = HttpMethod.GET.matches(request.getMethod()) || HttpMethod.HEAD.matches(request.getMethod());
        UriComponentsBuilder address = UriComponentsBuilder.fromPath(request.getContextPath() + SIGN_IN);
        if (!read) {
            address.queryParam("lost");
        } else if (hasEnded(request)) {
            address.queryParam("ended");
        }
        back(request, read).ifPresent(to -> address.queryParam("to", "{to}"));
        return address.encode().buildAndExpand(back(request, read).orElse("")).toUriString();
    }

    private static Optional<String> back(HttpServletRequest request, boolean read) {
        if (!read || request.getHeader("HX-Request") != null) {
            return LocalPath.ofReferer(request.getHeader("Referer"), request.getServerName());
        }
        String query = request.getQueryString();
        return LocalPath.of(request.getRequestURI() + (query == null ? "" : "?" + query))
                .filter(to -> !to.equals("/"));
    }

    private static boolean hasEnded(HttpServletRequest request) {
        return request.getAttribute(ENDED) != null
                || (request.getRequestedSessionId() != null && !request.isRequestedSessionIdValid());
    }
}
