package org.standclear.report;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;

/**
 * The days that a report is about, in the lab's zone.
 *
 * @param first the first day
 * @param last the last day, included
 */
public record TermSpan(LocalDate first, LocalDate last) {

    public TermSpan {
        if (last.isBefore(first)) {
            throw new IllegalArgumentException("a term ends on its first day or later");
        }
    }

    /** As many days again, before the first. */
    public TermSpan before() {
        long days = ChronoUnit.DAYS.between(first, last) + 1;
        return new TermSpan(first.minusDays(days), first.minusDays(1));
    }
}
