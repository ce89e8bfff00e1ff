package org.standclear.booking.web;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.standclear.platform.strip.Strip;

/**
 * One day on the Book page.
 *
 * @param iso the day as addresses have it
 * @param words "Thu 26 Nov"
 * @param headline what can be booked, in a sentence
 * @param shared the window in which the day is going to be shared out; null when it is in none
 * @param quota how much of the reader's own quota is used; empty for staff
 * @param misread what was wrong with the day that was asked for; null when nothing
 * @param before the day before; null when it is past
 * @param after the day after; null when it is beyond the horizon
 * @param leads whether the reader sets hours and rules
 */
record DayView(
        String iso,
        String words,
        String headline,
        @Nullable Shared shared,
        String quota,
        @Nullable String misread,
        @Nullable DayLink before,
        @Nullable DayLink after,
        List<DayLink> days,
        List<CellView> cells,
        boolean staff,
        boolean leads) {

    /**
     * What is shared out by a plan.
     *
     * @param asks whether people can still say when they can come
     */
    record Shared(String says, String href, boolean asks) {}

    /** A link to another day. */
    record DayLink(String iso, String words, boolean current) {}

    /**
     * A cell on that day.
     *
     * @param whyNot why nothing can be booked there, or why the reader cannot; null when something can
     */
    record CellView(
            String id,
            String name,
            String state,
            String stateWords,
            String tool,
            @Nullable String whyNot,
            @Nullable Strip strip,
            List<SlotMark> slots) {}

    /**
     * A slot in the list.
     *
     * @param href where it is booked; null when it cannot be
     * @param state {@code free}, {@code taken}, {@code offered}, {@code closed}, {@code mine}
     */
    record SlotMark(
            String time,
            String state,
            String words,
            @Nullable String href) {}
}
