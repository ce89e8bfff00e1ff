package org.standclear.signoff.rules;

import java.time.Duration;
import java.time.Instant;
import java.util.Comparator;
import java.util.List;

/** Adds up somebody's time at the e-stop, back to the last rest. */
public final class Spells {

    /** Clocks are corrected by less all the time, and what is lost of a turn is no more than that. */
    private static final Duration CORRECTION = Duration.ofMinutes(1);

    private Spells() {}

    /**
     * From a signature that says "my hand is on it" until it was no longer asked for.
     *
     * @param goesOn whether nothing on record has ended it; its end is then that of the look
     */
    public record Spell(Instant from, Instant until, boolean goesOn) {}

    /**
     * Whether somebody is at the e-stop since an instant that is still to come: the clock was set back, and nobody can tell
     * for how long. One that has ended is over, whenever the record says that it began.
     */
    public static boolean beganLater(List<Spell> spells, Instant now) {
        return spells.stream().anyMatch(spell -> spell.goesOn() && spell.from().isAfter(now.plus(CORRECTION)));
    }

    /** The time at the e-stop up to now, since the last time away that was as long as a rest. */
    public static Duration withoutRest(List<Spell> spells, Duration rest, Instant now) {
        List<Spell> latestFirst = spells.stream()
                .filter(spell -> spell.from().isBefore(spell.until()))
                .sorted(Comparator.comparing(Spell::until).reversed())
                .toList();
        Duration sum = Duration.ZERO;
        Instant edge = now;
        for (Spell spell : latestFirst) {
            // spells of one person may touch or overlap where a list was void and signed anew: no minute counts twice
            Instant until = spell.until().isAfter(edge) ? edge : spell.until();
            if (Duration.between(until, edge).compareTo(rest) >= 0) {
                break;
            }
            if (spell.from().isBefore(until)) {
                sum = sum.plus(Duration.between(spell.from(), until));
                edge = spell.from();
            }
        }
        return sum;
    }
}
