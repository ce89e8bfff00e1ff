package org.standclear.platform.strip;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Where instants stand on a strip that shows one stretch of time.
 *
 * @param from the strip's left end
 * @param until the strip's right end, after {@code from}
 * @param zone the zone whose full hours are marked
 */
public record StripScale(Instant from, Instant until, ZoneId zone) {

    /** Refuses a strip without length. */
    public StripScale {
        if (!from.isBefore(until)) {
            throw new IllegalArgumentException("a strip needs an end after its start, not " + from + " to " + until);
        }
    }

    /** The percent of the strip's width at which an instant stands; the ends when it lies beyond them. */
    public String place(Instant at) {
        return percent(share(at));
    }

    /** The percent of the strip's width between two instants, as far as the strip shows it. */
    public String width(Instant start, Instant end) {
        return percent(Math.max(0, share(end) - share(start)));
    }

    /** The place of an instant, or null when the strip does not show it. */
    public @Nullable String placeWithin(Instant at) {
        return at.isBefore(from) || at.isAfter(until) ? null : place(at);
    }

    /** The full hours of the zone that the strip shows; on a day with a clock change an hour may be missing or twice. */
    public List<HourMark> hours() {
        List<HourMark> marks = new ArrayList<>();
        ZonedDateTime hour = from.atZone(zone).truncatedTo(ChronoUnit.HOURS);
        for (; !hour.toInstant().isAfter(until); hour = hour.plusHours(1)) {
            if (!hour.toInstant().isBefore(from)) {
                marks.add(new HourMark(place(hour.toInstant()), twoDigits(hour.getHour())));
            }
        }
        return List.copyOf(marks);
    }

    private static String twoDigits(int hour) {
        return hour < 10 ? "0" + hour : String.valueOf(hour);
    }

    private double share(Instant at) {
        double whole = Duration.between(from, until).toMillis();
        return Math.max(0, Math.min(1, Duration.between(from, at).toMillis() / whole));
    }

    /** To a thousandth; put together by hand because a page with four strips asks some hundred times. */
    private static String percent(double share) {
        long thousandths = Math.round(share * 100_000);
        String rest = String.valueOf(1000 + thousandths % 1000).substring(1);
        return thousandths / 1000 + "." + rest + "%";
    }
}
