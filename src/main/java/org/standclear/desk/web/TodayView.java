package org.standclear.desk.web;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.standclear.platform.strip.Strip;

/**
 * The Today page.
 *
 * @param headline what goes on now, in a sentence
 * @param day "Thu 26 Nov"
 * @param at "14:12", the moment the page shows
 * @param onDuty printed names, or what it means that nobody is
 * @param waiting what waits for whom, soonest first; for students only their own
 */
record TodayView(String headline, String day, String at, String onDuty, List<Waits> waiting, List<CellCard> cells) {

    /** One booking that waits for something. */
    record Waits(String when, String what, String href, String state, String words, String says) {}

    /**
     * A cell's day.
     *
     * @param reason why it is held, restricted or out of service; empty when in service
     * @param strip null when the lab is closed and nothing stands on the cell
     */
    record CellCard(
            String id,
            String name,
            String state,
            String words,
            String reason,
            @Nullable Strip strip) {}
}
