package org.standclear.platform.security;

import jakarta.servlet.FilterChain;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import jakarta.servlet.http.HttpSession;
import java.io.IOException;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import org.springframework.security.authentication.UsernamePasswordAuthenticationToken;
import org.springframework.security.core.Authentication;
import org.springframework.security.core.context.SecurityContext;
import org.springframework.security.core.context.SecurityContextHolder;
import org.springframework.web.filter.OncePerRequestFilter;
import org.standclear.platform.lab.LabScope;
import org.standclear.platform.security.AccountStates.AccountState;
import org.standclear.platform.security.LabOfRequest.Decision;

/**
 * Holds each request of a running session against the account as it is now: one look-up by key. Then the request is for
 * one lab, and the person is in it what they are there and nothing else.
 */
class AccountGuard extends OncePerRequestFilter {

    static final String OWN_PASSWORD = "/me/password";

    private static final Set<String> ALWAYS = Set.of(OWN_PASSWORD, "/sign-out", "/sign-in", "/error");

    private final AccountStates accounts;
    private final LabOfRequest labs;

    AccountGuard(AccountStates accounts, LabOfRequest labs) {
        this.accounts = accounts;
        this.labs = labs;
    }

    @Override
    protected void doFilterInternal(HttpServletRequest request, HttpServletResponse response, FilterChain chain)
            throws ServletException, IOException {
        Authentication signedIn = SecurityContextHolder.getContext().getAuthentication();
        if (signedIn == null || !(signedIn.getPrincipal() instanceof SignedInPerson person)) {
            chain.doFilter(request, response);
            return;
        }
        Optional<AccountState> state = accounts.of(person.id());
        if (state.isEmpty()) {
            end(request);
            chain.doFilter(request, response);
            return;
        }
        if (state.get().mustChangePassword() && !goesOn(request)) {
            response.sendRedirect(request.getContextPath() + OWN_PASSWORD);
            return;
        }
        Decision decision = decision(request, state.get());
        follow(signedIn, person, state.get().printedName(), state.get().in(decision.lab()));
        LabScope scope = LabScope.enter(decision.lab());
        try {
            chain.doFilter(request, response);
        } finally {
            scope.close();
        }
    }

    /** An error page belongs to the lab that the request was for. */
    @Override
    protected boolean shouldNotFilterErrorDispatch() {
        return false;
    }

    private Decision decision(HttpServletRequest request, AccountState state) {
        if (request.getAttribute(LabOfRequest.DECISION) instanceof Decision made) {
            return made;
        }
        Decision decision = labs.decide(request, state);
        request.setAttribute(LabOfRequest.DECISION, decision);
        return decision;
    }

    private static boolean goesOn(HttpServletRequest request) {
        String path = request.getServletPath() + Objects.requireNonNullElse(request.getPathInfo(), "");
        return ALWAYS.contains(path) || AtTheCell.isStop(request);
    }

    private static void end(HttpServletRequest request) {
        HttpSession session = request.getSession(false);
        if (session != null) {
            session.invalidate();
        }
        SecurityContextHolder.clearContext();
        request.setAttribute(RefusedRequests.ENDED, true);
    }

    private static void follow(Authentication signedIn, SignedInPerson person, String printedName, Set<Role> roles) {
        if (person.stillIs(printedName, roles)) {
            return;
        }
        SignedInPerson now = person.as(printedName, roles);
        UsernamePasswordAuthenticationToken token =
                UsernamePasswordAuthenticationToken.authenticated(now, null, now.getAuthorities());
        token.setDetails(signedIn.getDetails());
        SecurityContext context = SecurityContextHolder.createEmptyContext();
        context.setAuthentication(token);
        SecurityContextHolder.setContext(context);
    }
}
