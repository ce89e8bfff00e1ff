package org.standclear.core.allocation;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;

/**
 * The problem in numbers with a plan on it that changes turn by turn, and whose changes can be taken back. Who holds a
 * slot, and whom a person's time is given to, is looked up and not searched for.
 */
final class Board {

    /** No turn, nobody. */
    static final int NONE = -1;

    private final Problem problem;
    private final int[] operators;
    private final int[] partners;
    private final Seat[][] seats;
    private final Map<String, Integer> numbers;
    private final String[] people;
    private final int[] holders;
    private final int[][] times;
    private final @Nullable Seat[] held;
    private final int[] attendants;
    private final List<Step> steps = new ArrayList<>();

    /** What a turn had before a change. */
    private record Step(int turn, @Nullable Seat seat, int attendant) {}

    Board(Problem problem, Places places) {
        this.problem = problem;
        int count = problem.turns().size();
        numbers = problem.numbers();
        people = numbers.keySet().toArray(new String[0]);
        operators = new int[count];
        partners = new int[count];
        held = new Seat[count];
        attendants = new int[count];
        Arrays.fill(attendants, NONE);
        holders = new int[problem.slots().size()];
        Arrays.fill(holders, NONE);
        Map<Instant, Integer> instants = instants(problem, places);
        times = new int[people.length][instants.size()];
        Arrays.stream(times).forEach(one -> Arrays.fill(one, NONE));
        seats = new Seat[count][];
        Map<Turn, Seat[]> byKind = new HashMap<>();
        for (int turn = 0; turn < count; turn++) {
            Turn one = problem.turns().get(turn);
            operators[turn] = numbers.getOrDefault(one.operator(), NONE);
            partners[turn] = one.partner() == null ? NONE : numbers.getOrDefault(one.partner(), NONE);
            seats[turn] = byKind.computeIfAbsent(one.kind(), kind -> seats(one, places, instants, numbers));
        }
    }

    private static Map<Instant, Integer> instants(Problem problem, Places places) {
        TreeSet<Instant> all = new TreeSet<>();
        for (Turn turn : problem.turns()) {
            for (Place place : places.of(turn)) {
                all.add(place.span().from());
                all.add(place.span().until());
            }
        }
        Map<Instant, Integer> numbers = new TreeMap<>();
        all.forEach(instant -> numbers.put(instant, numbers.size()));
        return numbers;
    }

    private static Seat[] seats(
            Turn turn, Places places, Map<Instant, Integer> instants, Map<String, Integer> numbers) {
        return places.of(turn).stream()
                .map(place -> {
                    int[] pool = turn.partner() != null
                            ? new int[0]
                            : places
                                    .pool(
                                            place.cell(),
                                            place.span(),
                                            turn.work().helper())
                                    .stream()
                                    .map(Attendant::person)
                                    .filter(person -> !person.equals(turn.operator()))
                                    .mapToInt(person -> numbers.getOrDefault(person, NONE))
                                    .sorted()
                                    .toArray();
                    return new Seat(
                            turn,
                            place,
                            instants.getOrDefault(place.span().from(), 0),
                            instants.getOrDefault(place.span().until(), 0),
                            pool);
                })
                .toArray(Seat[]::new);
    }

    int turns() {
        return held.length;
    }

    Turn turn(int turn) {
        return problem.turns().get(turn);
    }

    int operator(int turn) {
        return operators[turn];
    }

    /** In any order that suits who tries them: the array is the board's own and may be sorted, but not changed. */
    Seat[] seats(int turn) {
        return seats[turn];
    }

    @Nullable
    Seat held(int turn) {
        return held[turn];
    }

    int attendant(int turn) {
        return attendants[turn];
    }

    int holder(int slot) {
        return holders[slot];
    }

    /** Who would attend the turn there now; {@link #NONE} when nobody can, or a slot or the operator is taken. */
    int attendantIfFree(int turn, Seat seat) {
        for (int slot : seat.slots) {
            if (holders[slot] != NONE) {
                return NONE;
            }
        }
        if (!isFree(operators[turn], seat)) {
            return NONE;
        }
        if (partners[turn] != NONE) {
            return isFree(partners[turn], seat) ? partners[turn] : NONE;
        }
        for (int person : seat.pool) {
            if (isFree(person, seat)) {
                return person;
            }
        }
        return NONE;
    }

    private boolean isFree(int person, Seat seat) {
        int[] time = times[person];
        for (int at = seat.from; at < seat.until; at++) {
            if (time[at] != NONE) {
                return false;
            }
        }
        return true;
    }

    /** The turns that would have to move for the turn to go there, at most as many as fit in; more than that when it is hopeless. */
    int inTheWay(int turn, Seat seat, int[] into) {
        int found = 0;
        for (int slot : seat.slots) {
            found = add(holders[slot], into, found);
        }
        found = inTheWayOf(operators[turn], seat, into, found);
        if (partners[turn] != NONE) {
            return inTheWayOf(partners[turn], seat, into, found);
        }
        int[] most = new int[into.length];
        int fewest = into.length + 1;
        for (int person : seat.pool) {
            int[] tried = into.clone();
            int with = inTheWayOf(person, seat, tried, found);
            if (with < fewest) {
                fewest = with;
                most = tried;
            }
            if (with == found) {
                break;
            }
        }
        System.arraycopy(most, 0, into, 0, into.length);
        return fewest;
    }

    private int inTheWayOf(int person, Seat seat, int[] into, int found) {
        int now = found;
        int[] time = times[person];
        for (int at = seat.from; at < seat.until; at++) {
            now = add(time[at], into, now);
        }
        return now;
    }

    private static int add(int turn, int[] into, int found) {
        if (turn == NONE || found > into.length) {
            return found;
        }
        for (int index = 0; index < found; index++) {
            if (into[index] == turn) {
                return found;
            }
        }
        if (found < into.length) {
            into[found] = turn;
        }
        return found + 1;
    }

    /** Gives the turn another place, or none. */
    void put(int turn, @Nullable Seat seat, int attendant) {
        steps.add(new Step(turn, held[turn], attendants[turn]));
        change(turn, seat, attendant);
    }

    private void change(int turn, @Nullable Seat seat, int attendant) {
        Seat before = held[turn];
        if (before != null) {
            mark(before, turn, attendants[turn], NONE);
        }
        held[turn] = seat;
        attendants[turn] = attendant;
        if (seat != null) {
            mark(seat, turn, attendant, turn);
        }
    }

    private void mark(Seat seat, int turn, int attendant, int as) {
        for (int slot : seat.slots) {
            holders[slot] = as;
        }
        Arrays.fill(times[operators[turn]], seat.from, seat.until, as);
        Arrays.fill(times[attendant], seat.from, seat.until, as);
    }

    /** Gives it the place when that is free and somebody can attend; whether it did. */
    boolean putIfFree(int turn, Seat seat) {
        int attendant = attendantIfFree(turn, seat);
        if (attendant != NONE) {
            put(turn, seat, attendant);
        }
        return attendant != NONE;
    }

    /** Makes the changes since then stand for good. */
    void forget(int mark) {
        steps.subList(mark, steps.size()).clear();
    }

    /** Where the changes stand now, to take later ones back. */
    int mark() {
        return steps.size();
    }

    /** Takes back all changes since then. */
    void takeBack(int mark) {
        while (steps.size() > mark) {
            Step step = steps.remove(steps.size() - 1);
            change(step.turn(), step.seat(), step.attendant());
        }
    }

    /** Puts a plan that keeps the rules on the empty board. */
    void take(Plan plan) {
        Map<String, Placed> byTurn = plan.byTurn();
        for (int turn = 0; turn < held.length; turn++) {
            Placed placed = byTurn.get(turn(turn).id());
            if (placed != null) {
                for (Seat seat : seats[turn]) {
                    if (seat.place.cell().equals(placed.cell())
                            && seat.place.span().equals(placed.span())) {
                        put(turn, seat, numbers.getOrDefault(placed.attendant(), NONE));
                    }
                }
            }
        }
    }

    /** The plan that stands there. */
    Plan plan() {
        List<Placed> placed = new ArrayList<>();
        for (int turn = 0; turn < held.length; turn++) {
            Seat seat = held[turn];
            if (seat != null) {
                placed.add(new Placed(turn(turn).id(), seat.place.cell(), seat.place.span(), people[attendants[turn]]));
            }
        }
        return new Plan(placed);
    }
}
