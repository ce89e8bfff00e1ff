package org.standclear.core.allocation;

import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** How good a plan is, level by level; counted from the plan itself and not from what a solver says. */
public record Score(Map<Level, Long> values) implements Comparable<Score> {

    public Score {
        values = Collections.unmodifiableMap(new EnumMap<>(values));
    }

    /** Counts. */
    public static Score of(Problem problem, Plan plan) {
        Map<String, Placed> placed = plan.byTurn();
        Map<String, Integer> got = problem.turns().stream()
                .filter(turn -> placed.containsKey(turn.id()))
                .collect(Collectors.toMap(Turn::operator, turn -> 1, Integer::sum));
        Map<Level, Long> values = new EnumMap<>(Level.class);
        values.put(Level.MAKE_UPS, leftOut(problem, placed, true));
        values.put(Level.UNDER_MINIMUM, underMinimum(problem, got));
        values.put(Level.UNPLACED, leftOut(problem, placed, false));
        values.put(Level.UNFAIRNESS, unfairness(problem, got));
        values.put(Level.MOVED, moved(problem, placed));
        values.put(Level.WISHES, wishes(problem, placed));
        values.put(Level.TOOL_CHANGES, toolChanges(problem, placed));
        return new Score(values);
    }

    /** The value at a level. */
    public long at(Level level) {
        return Objects.requireNonNull(values.get(level));
    }

    @Override
    public int compareTo(Score other) {
        for (Level level : Level.values()) {
            int order = Long.compare(at(level), other.at(level));
            if (order != 0) {
                return order;
            }
        }
        return 0;
    }

    private static long leftOut(Problem problem, Map<String, Placed> placed, boolean onlyMakeUps) {
        return problem.turns().stream()
                .filter(turn -> (turn.makeUp() || !onlyMakeUps) && !placed.containsKey(turn.id()))
                .count();
    }

    private static long underMinimum(Problem problem, Map<String, Integer> got) {
        return problem.owed().entrySet().stream()
                .filter(owed -> got.getOrDefault(owed.getKey(), 0) < owed.getValue())
                .count();
    }

    private static long unfairness(Problem problem, Map<String, Integer> got) {
        Map<String, Integer> asked = problem.asked();
        Shares shares = Shares.of(asked.values());
        var spread = asked.entrySet().stream()
                .mapToLong(one -> got.getOrDefault(one.getKey(), 0) * shares.oneOf(one.getValue()))
                .summaryStatistics();
        return spread.getCount() == 0 ? 0 : spread.getMax() - spread.getMin();
    }

    private static long moved(Problem problem, Map<String, Placed> placed) {
        return problem.turns().stream()
                .filter(turn -> turn.standing() != null)
                .filter(turn -> isMoved(turn, placed.get(turn.id())))
                .count();
    }

    private static boolean isMoved(Turn turn, @Nullable Placed now) {
        return now == null || turn.isMovedTo(now.cell(), now.span());
    }

    private static long wishes(Problem problem, Map<String, Placed> placed) {
        long passed = 0;
        for (Turn turn : problem.turns()) {
            Placed place = placed.get(turn.id());
            if (place != null) {
                passed += turn.times().wishesPassed(place.cell(), place.span());
            }
        }
        return passed;
    }

    private static long toolChanges(Problem problem, Map<String, Placed> placed) {
        Map<String, List<Placed>> byCell = new HashMap<>();
        Map<String, String> tools = new HashMap<>();
        for (Turn turn : problem.turns()) {
            Placed place = placed.get(turn.id());
            if (place != null) {
                byCell.computeIfAbsent(place.cell(), cell -> new ArrayList<>()).add(place);
                tools.put(turn.id(), turn.work().tool());
            }
        }
        long changes = 0;
        for (Bench bench : problem.benches()) {
            List<Placed> there = new ArrayList<>(byCell.getOrDefault(bench.cell(), List.of()));
            there.sort((one, other) -> one.span().from().compareTo(other.span().from()));
            String fitted = bench.fitted();
            for (Placed place : there) {
                String tool = Objects.requireNonNull(tools.get(place.turn()));
                changes += tool.equals(fitted) ? 0 : 1;
                fitted = tool;
            }
        }
        return changes;
    }
}
