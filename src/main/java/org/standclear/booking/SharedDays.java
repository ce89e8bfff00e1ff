package org.standclear.booking;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

/**
 * Days ahead that are going to be shared out by a plan. Until the plan is accepted, the window closed or the first day here,
 * their slots are not given to whoever comes first, or there would be little left to share.
 */
public interface SharedDays {

    /** Those of the lab, by first day. */
    List<SharedOut> ahead();

    /** The one that the day is part of. */
    default Optional<SharedOut> on(LocalDate day) {
        return ahead().stream().filter(one -> one.has(day)).findFirst();
    }

    /**
     * Days of one window.
     *
     * @param asks until when people say when they can come, in words; empty when that is over
     */
    record SharedOut(UUID window, String title, LocalDate first, LocalDate last, String asks) {

        /** Whether the day is one of them. */
        public boolean has(LocalDate day) {
            return !day.isBefore(first) && !day.isAfter(last);
        }

        /** What that means for who wants a slot then. */
        public String says() {
            return "The slots are shared out by a plan (\"" + title + "\"), not to whoever comes first. "
                    + (asks.isEmpty()
                            ? "Requests for it have ended; what is left is free for all when the plan is accepted."
                            : "Say by " + asks + " when you can come.");
        }
    }
}
