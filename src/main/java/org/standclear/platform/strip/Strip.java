package org.standclear.platform.strip;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A strip as a page draws it.
 *
 * @param key letters, digits and hyphens that no other strip on the page has
 * @param name what the strip shows: "Avocet, Thu 26 Nov"
 * @param hours the hours marked above it
 * @param blocks what stands on it, in order of time
 * @param now where the line for this moment stands, or null when the strip shows another day
 */
public record Strip(
        String key,
        String name,
        List<HourMark> hours,
        List<StripBlock> blocks,
        @Nullable String now) {

    /** Copies the lists. */
    public Strip {
        hours = List.copyOf(hours);
        blocks = List.copyOf(blocks);
    }
}
