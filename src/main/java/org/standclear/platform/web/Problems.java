package org.standclear.platform.web;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.Map;
import org.springframework.http.HttpStatus;
import tools.jackson.databind.json.JsonMapper;

/** Writes errors for programs as problem details (RFC 9457): type, title, status, detail. */
public final class Problems {

    /** Everything below this is for programs, not for people at a browser. */
    public static final String PATH = "/api/";

    /** The media type of RFC 9457. */
    public static final String MEDIA_TYPE = "application/problem+json";

    private static final JsonMapper JSON = JsonMapper.builder().build();

    private Problems() {}

    /** Whether the request asks for something that programs use. */
    public static boolean wanted(HttpServletRequest request) {
        return request.getRequestURI().startsWith(request.getContextPath() + PATH);
    }

    /**
     * The text of a problem; RFC 9457, 4.2.1 gives {@code about:blank} to those that the status alone describes.
     *
     * @param more members of our own
     */
    public static String text(HttpStatus status, String detail, Map<String, ?> more) {
        Map<String, Object> problem = new LinkedHashMap<>();
        problem.put("type", "about:blank");
        problem.put("title", status.getReasonPhrase());
        problem.put("status", status.value());
        problem.put("detail", detail);
        problem.putAll(more);
        return JSON.writeValueAsString(problem);
    }

    /** Answers with a problem. */
    public static void write(HttpServletResponse response, HttpStatus status, String detail) throws IOException {
        response.setStatus(status.value());
        response.setContentType(MEDIA_TYPE);
        response.setCharacterEncoding(StandardCharsets.UTF_8);
        response.getWriter().write(text(status, detail, Map.of()));
    }
}
