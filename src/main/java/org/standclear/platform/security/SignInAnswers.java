package org.standclear.platform.security;

import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.time.Duration;
import java.util.Locale;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.security.core.Authentication;
import org.springframework.security.core.AuthenticationException;
import org.springframework.security.web.authentication.AuthenticationFailureHandler;
import org.springframework.security.web.authentication.AuthenticationSuccessHandler;
import org.springframework.stereotype.Component;

/** What follows the sign-in form: back to where one was, or the form again with the reason. */
@Component
class SignInAnswers implements AuthenticationSuccessHandler, AuthenticationFailureHandler {

    private final Duration timeout;

    SignInAnswers(@Value("${standclear.signed-in-for:8h}") Duration timeout) {
        this.timeout = timeout;
    }

    @Override
    public void onAuthenticationSuccess(
            HttpServletRequest request, HttpServletResponse response, Authentication authentication)
            throws IOException {
        // sessions of people who only looked at the sign-in page end sooner
        request.getSession().setMaxInactiveInterval((int) timeout.toSeconds());
        response.sendRedirect(request.getContextPath()
                + LocalPath.of(request.getParameter("to")).orElse("/"));
    }

    @Override
    public void onAuthenticationFailure(
            HttpServletRequest request, HttpServletResponse response, AuthenticationException error)
            throws IOException, ServletException {
        request.setAttribute(RefusedSignIn.ATTRIBUTE, refused(request, error));
        request.getRequestDispatcher(RefusedSignIn.PATH).forward(request, response);
    }

    private static RefusedSignIn refused(HttpServletRequest request, AuthenticationException error) {
        String login = String.valueOf(request.getParameter("username")).strip().toLowerCase(Locale.ROOT);
        String shown = login.length() <= 60 && login.matches("[\\p{Graph}]*") ? login : "";
        return new RefusedSignIn(
                shown,
                LocalPath.of(request.getParameter("to")).orElse(""),
                error instanceof SignInPausedException paused ? paused.until() : null);
    }
}
