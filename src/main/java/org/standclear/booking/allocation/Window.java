package org.standclear.booking.allocation;

import java.time.Instant;
import java.time.LocalDate;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.standclear.platform.ids.PersonId;

/**
 * Days whose slots are shared out by a plan.
 *
 * @param requestsUntil people can ask until then
 * @param accepted null until somebody accepts a plan
 * @param closed null unless somebody ended it without one
 */
public record Window(
        UUID id,
        String title,
        LocalDate firstDay,
        LocalDate lastDay,
        Instant requestsUntil,
        @Nullable Accepted accepted,
        @Nullable Closed closed) {

    public Window {
        if (lastDay.isBefore(firstDay)) {
            throw new IllegalArgumentException("a window ends after it begins");
        }
    }

    /** Which plan counts, and who said so. */
    public record Accepted(UUID search, PersonId by, Instant at) {}

    /** Who ended it without a plan, and why. */
    public record Closed(PersonId by, Instant at, String reason) {}

    /** Whether people can still ask. */
    public boolean takesRequests(Instant now) {
        return isUndecided() && now.isBefore(requestsUntil);
    }

    /** Whether it has neither a plan nor been closed. */
    public boolean isUndecided() {
        return accepted == null && closed == null;
    }
}
