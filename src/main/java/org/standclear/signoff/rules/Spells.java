package org.standclear.signoff.rules;

import java.time.Duration;
import java.time.Instant;
import java.util.Comparator;
import java.util.List;

/** Adds up somebody's time at the e-stop, back to the last rest. */
public final class Spells {

    private Spells() {}

    /** From a signature that says "my hand is on it" until it was no longer asked for. */
    public record Spell(Instant from, Instant until) {}

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
