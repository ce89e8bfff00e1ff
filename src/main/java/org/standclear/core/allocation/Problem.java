package org.standclear.core.allocation;

import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;

/**
 * Everything that a plan is made from. Ids are the caller's; nothing here knows why somebody needs what.
 *
 * @param owed how many turns each operator still has to get at least; nobody who is left out owes any
 * @param busy when people are taken up by something else
 */
public record Problem(
        List<Bench> benches,
        List<FreeSlot> slots,
        List<Attendant> attendants,
        List<Turn> turns,
        Map<String, Integer> owed,
        Map<String, List<Span>> busy,
        List<Closed> closed) {

    /** More turns of one person than this would make shares too fine to compare without rounding. */
    public static final int MOST_TURNS_EACH = 12;

    public Problem {
        benches = List.copyOf(benches);
        slots = List.copyOf(slots);
        attendants = List.copyOf(attendants);
        turns = List.copyOf(turns);
        owed = Map.copyOf(owed);
        busy = Map.copyOf(busy);
        closed = List.copyOf(closed);
        unique(benches, Bench::cell, "cell");
        unique(turns, Turn::id, "turn");
        unique(attendants, Attendant::person, "attendant");
        asked(turns).forEach((operator, asked) -> {
            if (asked > MOST_TURNS_EACH) {
                throw new IllegalArgumentException(
                        operator + " asks for " + asked + " turns; at most " + MOST_TURNS_EACH + " in one window");
            }
        });
    }

    private static <T> void unique(List<T> all, Function<T, String> id, String what) {
        Set<String> seen = new HashSet<>();
        for (T one : all) {
            if (!seen.add(id.apply(one))) {
                throw new IllegalArgumentException("the " + what + " " + id.apply(one) + " is there twice");
            }
        }
    }

    /** Whether something else takes the person up in that time. */
    boolean isBusy(String person, Span span) {
        return busy.getOrDefault(person, List.of()).stream().anyMatch(span::overlaps);
    }

    /** Whether the cell or the lab is kept for something else in that time. */
    boolean isClosed(String cell, Span span) {
        return closed.stream().anyMatch(one -> one.hits(cell, span));
    }

    /** How many turns each operator asks for. */
    public Map<String, Integer> asked() {
        return asked(turns);
    }

    private static Map<String, Integer> asked(List<Turn> turns) {
        return turns.stream().collect(Collectors.toMap(Turn::operator, turn -> 1, Integer::sum));
    }

    /** Everybody's number. Those with turns of their own come last, so that others are asked to attend before them. */
    Map<String, Integer> numbers() {
        Map<String, Integer> numbers = new LinkedHashMap<>();
        Map<String, Integer> asked = asked();
        attendants.stream()
                .map(Attendant::person)
                .filter(person -> !asked.containsKey(person))
                .forEach(person -> numbers.put(person, numbers.size()));
        turns.forEach(turn -> {
            numbers.computeIfAbsent(turn.operator(), person -> numbers.size());
            if (turn.partner() != null) {
                numbers.computeIfAbsent(turn.partner(), person -> numbers.size());
            }
        });
        return numbers;
    }

    /** The attendants by person. */
    Map<String, Attendant> attendantsByPerson() {
        return attendants.stream().collect(Collectors.toMap(Attendant::person, Function.identity()));
    }
}
