package org.standclear.check;

import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import org.standclear.core.limits.CourseLimits;

/** Reads the limits back from the fixed form in which {@link LimitsAsked} keeps them. */
final class LimitsKey {

    private static final Pattern FORM = Pattern.compile("override (\\S+), tool speed (\\S+)( of .*)?");

    private LimitsKey() {}

    /** The limits that a stored key stands for. */
    static CourseLimits limits(String key) {
        Matcher parts = FORM.matcher(key);
        if (!parts.matches()) {
            throw new IllegalStateException("no limits are kept as " + key);
        }
        return new CourseLimits(number(parts.group(1)), number(parts.group(2)));
    }

    private static @Nullable Double number(String shown) {
        return shown.equals("none") ? null : Double.valueOf(shown);
    }
}
