package org.standclear.booking.feed;

import java.time.Instant;

/**
 * One event of a calendar.
 *
 * @param uid the same for all versions of the event (RFC 5545 3.8.4.7)
 * @param sequence grows with every change (3.8.7.4)
 * @param changedAt when it was changed last
 * @param cancelled it does not take place any more (3.8.1.11)
 * @param url the page it is about; empty for none
 */
public record CalendarEvent(
        String uid,
        int sequence,
        Instant changedAt,
        Instant start,
        Instant end,
        String summary,
        String description,
        String location,
        boolean cancelled,
        String url) {}
