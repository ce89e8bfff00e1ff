package org.standclear.report.records;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;

/**
 * Lays what comes round on a cell into a term. It is due so many days after it was done, and before it was ever done, on the
 * day on which somebody said how often.
 */
final class DutyTerm {

    private final LocalDate first;
    private final LocalDate last;
    private final List<Spell> spells = new ArrayList<>();

    /** From when it was done, or first asked for, to the day before it was done again. */
    private record Spell(LocalDate due, LocalDate until) {}

    /**
     * The spells of one duty.
     *
     * @param asked the day on which an interval was first set
     * @param done the days on which it was done, in order
     * @param last of the term, or today when that is earlier: nobody knows what comes
     */
    DutyTerm(LocalDate asked, int intervalDays, List<LocalDate> done, LocalDate first, LocalDate last) {
        this.first = first;
        this.last = last;
        LocalDate due = asked;
        for (LocalDate on : done) {
            spells.add(new Spell(due, on));
            due = on.plusDays(intervalDays);
        }
        spells.add(new Spell(due, LocalDate.MAX));
    }

    /** How often its last day lay in the term without its having been done before that day. */
    int fellDue() {
        return (int) spells.stream()
                .filter(spell -> !spell.due().isBefore(first) && !spell.due().isAfter(last))
                .filter(spell -> !spell.until().isBefore(spell.due()))
                .count();
    }

    /** Days of the term on which it was late; the day on which it is done is none of them. */
    int overdueDays() {
        long days = 0;
        for (Spell spell : spells) {
            LocalDate from = later(spell.due().plusDays(1), first);
            LocalDate until = spell.until().isAfter(last) ? last.plusDays(1) : spell.until();
            days += Math.max(0, ChronoUnit.DAYS.between(from, until));
        }
        return (int) days;
    }

    /** Its last day as known at the end of the term. */
    LocalDate next() {
        return spells.get(spells.size() - 1).due();
    }

    boolean lateAtEnd() {
        return last.isAfter(next());
    }

    private static LocalDate later(LocalDate one, LocalDate other) {
        return one.isAfter(other) ? one : other;
    }
}
