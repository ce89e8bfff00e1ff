package org.standclear.report.records;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Inspections laid into a term of ninety-one days, counted by hand on a calendar. */
class DutyTermTests {

    private static final LocalDate FIRST = LocalDate.of(2026, 9, 1);
    private static final LocalDate LAST = LocalDate.of(2026, 11, 30);

    private static LocalDate day(int month, int day) {
        return LocalDate.of(2026, month, day);
    }

    private static DutyTerm term(int days, LocalDate... done) {
        return new DutyTerm(day(8, 1), days, List.of(done), FIRST, LAST);
    }

    @Test
    void doneInTimeIsNeverLate() {
        DutyTerm term = term(30, day(8, 1), day(8, 25), day(9, 24), day(10, 20), day(11, 19));

        assertThat(term.overdueDays()).isZero();
        assertThat(term.fellDue())
                .as("9-24 on its last day; the others before it")
                .isEqualTo(2);
        assertThat(term.next()).isEqualTo(day(12, 19));
        assertThat(term.lateAtEnd()).isFalse();
    }

    @Test
    void doneLateCountsTheDaysBetween() {
        DutyTerm term = term(30, day(8, 20), day(9, 29));

        // due 19 September, late from the 20th to the 28th; due again 29 October, late to the end of the term
        assertThat(term.fellDue()).isEqualTo(2);
        assertThat(term.overdueDays()).isEqualTo(9 + 2 + 30);
        assertThat(term.next()).isEqualTo(day(10, 29));
        assertThat(term.lateAtEnd()).isTrue();
    }

    @Test
    void lateBeforeTheTermCountsWithinItOnly() {
        DutyTerm term = term(10, day(8, 2), day(9, 4));

        // due 12 August, before the term; three days of September late, then from 15 September on
        assertThat(term.overdueDays()).isEqualTo(3 + 16 + 31 + 30);
        assertThat(term.fellDue()).isEqualTo(1);
    }

    @Test
    void neverDoneIsDueSinceItWasAskedFor() {
        DutyTerm asked = new DutyTerm(day(11, 28), 365, List.of(), FIRST, LAST);

        assertThat(asked.fellDue()).isEqualTo(1);
        assertThat(asked.overdueDays()).isEqualTo(2);
        assertThat(asked.next()).isEqualTo(day(11, 28));
    }

    @Test
    void isLateFromTheDayAfterItsLastOne() {
        assertThat(new DutyTerm(LAST, 30, List.of(), FIRST, LAST).overdueDays()).isZero();
        assertThat(new DutyTerm(LAST.minusDays(1), 30, List.of(), FIRST, LAST).overdueDays())
                .isEqualTo(1);
        assertThat(new DutyTerm(LAST, 30, List.of(), FIRST, LAST).lateAtEnd()).isFalse();
    }
}
