package org.standclear.desk.web;

import java.time.Instant;
import java.util.List;

/**
 * A person's own page.
 *
 * @param headline the next slot, or that there is none
 * @param books whether the person books at all
 * @param operates whether the person is authorised to operate or attend now
 * @param ahead bookings ahead, as operator or attendant, soonest first
 * @param due assignments with how many runs are closed out
 * @param programs the latest programs with what the check said last
 * @param ending a sentence for each authorisation that ends soon and is not followed by another
 * @param pin whether the person has chosen a signing PIN
 * @param record bookings that are over or were given up, latest first
 */
record MyView(
        String headline,
        boolean books,
        boolean operates,
        List<Ahead> ahead,
        List<Due> due,
        List<ProgramLine> programs,
        List<Authorised> authorisations,
        List<String> ending,
        boolean pin,
        List<Past> record) {

    /**
     * A booking ahead.
     *
     * @param whose of which lab and by whose clock; empty for the present lab
     */
    record Ahead(
            String id,
            Instant start,
            String when,
            String whose,
            String cell,
            String part,
            String with,
            String state,
            String words,
            boolean finished,
            NextStep next) {}

    /** An assignment. */
    record Due(String name, String when, int runs, int minimum, boolean reached, boolean overdue) {}

    /** A program and the last answer. */
    record ProgramLine(String href, String name, String fingerprintEnd, String state, String answer) {}

    /** An authorisation. */
    record Authorised(String duty, String where, String until, String state, String words) {}

    /** A booking that is over. */
    record Past(String id, Instant start, String when, String cell, String part, String state, String words) {}
}
