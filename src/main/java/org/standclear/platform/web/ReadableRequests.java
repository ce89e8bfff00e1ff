package org.standclear.platform.web;

import jakarta.servlet.FilterChain;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.util.Map;
import org.apache.tomcat.util.http.InvalidParameterException;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.core.annotation.Order;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Component;
import org.springframework.util.unit.DataSize;
import org.springframework.web.filter.OncePerRequestFilter;

/**
 * Refuses requests whose parameters or parts cannot be read before anything looks at them. The container would otherwise
 * leave the unreadable ones out, and a form that is too large would seem to come without its tokens.
 */
@Component
@Order(ReadableRequests.BEFORE_SECURITY)
class ReadableRequests extends OncePerRequestFilter {

    static final int BEFORE_SECURITY = -200;

    private static final int LONGEST_QUERY = 4000;

    private final long longestBody;

    ReadableRequests(@Value("${spring.servlet.multipart.max-request-size}") DataSize longestBody) {
        this.longestBody = longestBody.toBytes();
    }

    @Override
    protected void doFilterInternal(HttpServletRequest request, HttpServletResponse response, FilterChain chain)
            throws ServletException, IOException {
        int refused = refusal(request);
        if (refused != HttpServletResponse.SC_OK) {
            if (Problems.wanted(request)) {
                Problems.write(
                        response,
                        HttpStatus.valueOf(refused),
                        refused == HttpServletResponse.SC_REQUEST_ENTITY_TOO_LARGE
                                ? "What was sent is too large. A file, program or photo, may have 8 MiB at most, and its name some thousand characters."
                                : "The request has something in it that cannot be read.");
            } else {
                response.sendError(refused);
            }
            return;
        }
        chain.doFilter(request, response);
    }

    private int refusal(HttpServletRequest request) {
        String query = request.getQueryString();
        if (query != null && query.length() > LONGEST_QUERY) {
            return HttpServletResponse.SC_BAD_REQUEST;
        }
        if (request.getContentLengthLong() > longestBody) {
            // what it says is enough: nothing of it is read first
            return HttpServletResponse.SC_REQUEST_ENTITY_TOO_LARGE;
        }
        try {
            if (isMultipart(request)) {
                request.getParts();
            }
            return hasNul(request.getParameterMap()) ? HttpServletResponse.SC_BAD_REQUEST : HttpServletResponse.SC_OK;
        } catch (InvalidParameterException unreadable) {
            return unreadable.getErrorCode();
        } catch (IllegalStateException | IOException | ServletException unreadable) {
            return isTooLarge(unreadable)
                    ? HttpServletResponse.SC_REQUEST_ENTITY_TOO_LARGE
                    : HttpServletResponse.SC_BAD_REQUEST;
        }
    }

    private static boolean isMultipart(HttpServletRequest request) {
        String type = request.getContentType();
        return type != null && type.toLowerCase(java.util.Locale.ROOT).startsWith("multipart/");
    }

    /** No field takes the NUL character, and PostgreSQL would refuse to store it. */
    private static boolean hasNul(Map<String, String[]> parameters) {
        return parameters.entrySet().stream().anyMatch(parameter -> {
            boolean nul = parameter.getKey().indexOf('\0') >= 0;
            for (String value : parameter.getValue()) {
                nul |= value.indexOf('\0') >= 0;
            }
            return nul;
        });
    }

    private static boolean isTooLarge(Throwable error) {
        for (Throwable cause = error; cause != null; cause = cause.getCause()) {
            String kind = cause.getClass().getSimpleName();
            if (kind.contains("SizeLimit") || kind.contains("CountLimit")) {
                return true;
            }
        }
        return false;
    }
}
