package org.standclear.platform.security;

import jakarta.servlet.FilterChain;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import org.springframework.http.HttpStatus;
import org.springframework.web.filter.OncePerRequestFilter;
import org.standclear.platform.security.LabOfRequest.Decision;
import org.standclear.platform.web.Problems;

/** What belongs to a lab that is not the person's is not found; whoever may not use the route at all hears that first. */
class OtherLabs extends OncePerRequestFilter {

    @Override
    protected void doFilterInternal(HttpServletRequest request, HttpServletResponse response, FilterChain chain)
            throws ServletException, IOException {
        if (request.getAttribute(LabOfRequest.DECISION) instanceof Decision decision && decision.elsewhere()) {
            if (Problems.wanted(request)) {
                Problems.write(response, HttpStatus.NOT_FOUND, "There is nothing at this address.");
            } else {
                response.sendError(HttpServletResponse.SC_NOT_FOUND);
            }
            return;
        }
        chain.doFilter(request, response);
    }
}
