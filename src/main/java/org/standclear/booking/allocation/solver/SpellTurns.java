package org.standclear.booking.allocation.solver;

import com.google.ortools.sat.IntVar;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.standclear.booking.allocation.solver.AskedFor.Group;
import org.standclear.booking.allocation.solver.BlockModel.Option;
import org.standclear.core.allocation.Place;
import org.standclear.core.allocation.Problem;
import org.standclear.core.allocation.Span;
import org.standclear.core.allocation.Turn;

/**
 * What numbers of turns in blocks have in one spell.
 *
 * @param turns their ids; of turns that are alike any
 * @param meant where the numbers have them, by kind
 * @param passed wishes that they pass over there at least
 */
record SpellTurns(Span spell, Set<String> turns, Map<Turn, Set<Where>> meant, long passed) {

    /** For each spell, in order of time. */
    static List<SpellTurns> of(Problem problem, List<Span> spells, BlockModel blocks, Map<IntVar, Long> numbers) {
        Map<Turn, Deque<String>> ids = new HashMap<>();
        problem.turns()
                .forEach(turn -> ids.computeIfAbsent(turn.kind(), kind -> new ArrayDeque<>())
                        .add(turn.id()));
        List<SpellTurns> all = new ArrayList<>();
        spells.forEach(spell -> all.add(one(spell, ids, blocks, numbers)));
        return all;
    }

    private static SpellTurns one(
            Span spell, Map<Turn, Deque<String>> ids, BlockModel blocks, Map<IntVar, Long> numbers) {
        Set<String> turns = new HashSet<>();
        Map<Turn, Set<Where>> meant = new HashMap<>();
        long passed = 0;
        for (Group<IntVar> group : blocks.alike()) {
            Turn kind = group.one().kind();
            Deque<String> left = ids.getOrDefault(kind, new ArrayDeque<>());
            for (Option option : blocks.options(group.one())) {
                long count = spell.holds(option.places().get(0).span()) ? numbers.getOrDefault(option.number(), 0L) : 0;
                passed += count * passed(option);
                if (count > 0) {
                    meant.computeIfAbsent(kind, key -> new HashSet<>())
                            .addAll(option.places().stream().map(Where::of).toList());
                }
                for (long turn = 0; turn < count && !left.isEmpty(); turn++) {
                    turns.add(left.remove());
                }
            }
        }
        return new SpellTurns(spell, turns, meant, passed);
    }

    /** Wishes that a turn passes over there at least. */
    private static long passed(Option option) {
        return option.places().stream()
                .mapToLong(place -> option.kind().times().wishesPassed(place.cell(), place.span()))
                .min()
                .orElse(0);
    }

    /** Whether the numbers have turns of that kind there. */
    boolean isMeant(Turn turn, Place place) {
        return meant.getOrDefault(turn.kind(), Set.of()).contains(Where.of(place));
    }
}
