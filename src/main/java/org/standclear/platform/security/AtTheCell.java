package org.standclear.platform.security;

import jakarta.servlet.http.HttpServletRequest;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.springframework.http.HttpMethod;
import org.standclear.platform.ids.Id;

/**
 * What stands open at a cell to everybody who has signed in, whatever else is asked of them and whichever lab they belong
 * to: whoever stands there may log a stop or hold the cell, and so may see the screen on which that is done.
 */
final class AtTheCell {

    private static final Pattern STOPS = Pattern.compile("/bench/([^/]+)/(?:stop|holds)|/cells/([^/]+)/stop");
    private static final Pattern SCREEN = Pattern.compile("/bench/([^/]+)(?:/pulse)?|/cells/([^/]+)/stop");

    private AtTheCell() {}

    /** Whether a stop or a hold is sent; what else is asked of the person can wait. */
    static boolean isStop(HttpServletRequest request) {
        return HttpMethod.POST.matches(request.getMethod())
                && STOPS.matcher(path(request)).matches();
    }

    /** The cell at whose open screen the request is made; empty for every other request. */
    static Optional<UUID> cell(HttpServletRequest request) {
        Pattern open = HttpMethod.POST.matches(request.getMethod()) ? STOPS : SCREEN;
        Matcher path = open.matcher(path(request));
        try {
            return path.matches()
                    ? Optional.of(Id.parse(path.group(1) == null ? path.group(2) : path.group(1)))
                    : Optional.empty();
        } catch (IllegalArgumentException noId) {
            return Optional.empty();
        }
    }

    private static String path(HttpServletRequest request) {
        return request.getServletPath() + Objects.requireNonNullElse(request.getPathInfo(), "");
    }
}
