package org.standclear.booking.allocation.solver;

import com.google.ortools.sat.CpModel;
import com.google.ortools.sat.IntVar;
import com.google.ortools.sat.LinearExpr;
import com.google.ortools.sat.LinearExprBuilder;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.standclear.core.allocation.Span;
import org.standclear.core.allocation.Turn;

/** Rules that nobody is in two places, for numbers of turns in blocks. */
final class PeopleTime {

    private final CpModel model;
    private final TimeLimits limits = new TimeLimits();
    private final Map<String, Map<Set<Span>, Taking>> byPerson = new TreeMap<>();

    /** Numbers that take a person up in the same spans. */
    private static final class Taking {

        private final List<IntVar> numbers = new ArrayList<>();
        private final Set<List<Integer>> blocks = new HashSet<>();
        private int most;
    }

    PeopleTime(CpModel model) {
        this.model = model;
    }

    /** So many turns of that kind are in these blocks, at some of these spans. */
    void operates(Turn kind, List<Integer> blocks, Set<Span> spans, IntVar number) {
        take(kind.operator(), blocks, spans, number, 0);
        String partner = kind.partner();
        if (partner != null) {
            take(partner, blocks, spans, number, 0);
        }
    }

    /** The person stands at so many e-stops in these blocks, at some of these spans. */
    void attends(String person, List<Integer> blocks, Set<Span> spans, IntVar number) {
        take(person, blocks, spans, number, spans.size());
    }

    /**
     * Turns take no more than the slots in any case, and cells whose slots begin together have one for each span and cell;
     * who attends may be said to attend the own turn as well.
     */
    private void take(String person, List<Integer> blocks, Set<Span> spans, IntVar number, int more) {
        Taking taking = byPerson.computeIfAbsent(person, key -> new LinkedHashMap<>())
                .computeIfAbsent(spans, key -> new Taking());
        taking.numbers.add(number);
        taking.most += (taking.blocks.add(blocks) ? spans.size() : 0) + more;
    }

    /** Adds the rules. */
    void addRules() {
        Set<Set<List<IntVar>>> done = new HashSet<>();
        byPerson.values().forEach(takings -> {
            Set<List<IntVar>> numbers = new HashSet<>();
            takings.values().forEach(taking -> numbers.add(taking.numbers));
            // both of a pair are taken up by the same
            if (done.add(numbers)) {
                add(takings);
            }
        });
    }

    private void add(Map<Set<Span>, Taking> takings) {
        List<Taking> all = List.copyOf(takings.values());
        List<List<Span>> spans = takings.keySet().stream().map(List::copyOf).toList();
        int[] most = all.stream().mapToInt(taking -> taking.most).toArray();
        for (TimeLimits.Limit limit : limits.of(spans, most)) {
            LinearExprBuilder sum = LinearExpr.newBuilder();
            for (int taking = 0; taking < most.length; taking++) {
                int weight = limit.weights()[taking];
                if (weight > 0) {
                    all.get(taking).numbers.forEach(number -> sum.addTerm(number, weight));
                }
            }
            model.addLessOrEqual(sum, limit.most());
        }
    }
}
