package org.standclear.platform.web;

import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import org.springframework.http.HttpHeaders;

/**
 * A file of comma-separated lines (RFC 4180) that somebody saves and opens in a table program. It begins with a byte order
 * mark: without one such programs take a file for the letters of their country and misspell every name with an accent. A
 * program that reads UTF-8 has to leave the mark out, as our own import does.
 */
public final class TableFile {

    private static final char BYTE_ORDER_MARK = '\uFEFF';

    private TableFile() {}

    /** Begins the answer; what is written to it are the lines. */
    public static PrintWriter begin(HttpServletResponse response, String name) throws IOException {
        response.setContentType("text/csv");
        response.setCharacterEncoding(StandardCharsets.UTF_8.name());
        response.setHeader(HttpHeaders.CONTENT_DISPOSITION, "attachment; filename=\"" + name + "\"");
        PrintWriter lines = response.getWriter();
        lines.write(BYTE_ORDER_MARK);
        return lines;
    }
}
