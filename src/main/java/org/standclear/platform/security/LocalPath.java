package org.standclear.platform.security;

import java.net.URI;
import java.net.URISyntaxException;
import java.util.Optional;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** A place inside this application to go to after signing in; anything that could lead elsewhere is none. */
public final class LocalPath {

    private static final int LONGEST = 1000;

    /** One slash first, so no other host; then what a path and a query are written with (RFC 3986), so no backslash. */
    private static final Pattern LOCAL =
            Pattern.compile("/(?:[A-Za-z0-9._~!$&'()*+,;=:@%?-][A-Za-z0-9._~!$&'()*+,;=:@%/?-]*)?");

    private static final Pattern NOT_TO = Pattern.compile("/(?:sign-in|sign-out|setup|error)(?:[/?].*)?");

    /** Dots and empty parts that lead up or to another host once resolved, written out or in percent. */
    private static final Pattern LEADS_AWAY = Pattern.compile("[^?]*(?://|/\\.\\.?(?:[/;?]|$)|%(?i:2e|2f|5c)).*");

    private LocalPath() {}

    /** The path with its query when it is local and worth going to. */
    public static Optional<String> of(@Nullable String asked) {
        if (asked == null || asked.length() > LONGEST || !LOCAL.matcher(asked).matches()) {
            return Optional.empty();
        }
        boolean away = LEADS_AWAY.matcher(asked).matches();
        return away || NOT_TO.matcher(asked).matches() ? Optional.empty() : Optional.of(asked);
    }

    /** The local path of the page that a request came from, when it was one of this host. */
    static Optional<String> ofReferer(@Nullable String referer, String host) {
        if (referer == null) {
            return Optional.empty();
        }
        try {
            URI uri = new URI(referer);
            String query = uri.getRawQuery() == null ? "" : "?" + uri.getRawQuery();
            return host.equals(uri.getHost()) ? of(uri.getRawPath() + query) : Optional.empty();
        } catch (URISyntaxException notAnAddress) {
            return Optional.empty();
        }
    }
}
