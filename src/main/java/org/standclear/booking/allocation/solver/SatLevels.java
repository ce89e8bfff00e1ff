package org.standclear.booking.allocation.solver;

import com.google.ortools.sat.BoolVar;
import com.google.ortools.sat.CpModel;
import com.google.ortools.sat.IntVar;
import com.google.ortools.sat.LinearExpr;
import com.google.ortools.sat.LinearExprBuilder;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.Supplier;
import java.util.function.ToLongFunction;
import org.standclear.booking.allocation.solver.AskedFor.Group;
import org.standclear.booking.allocation.solver.SatStage.Part;
import org.standclear.core.allocation.Level;
import org.standclear.core.allocation.Placed;
import org.standclear.core.allocation.Problem;
import org.standclear.core.allocation.Shares;
import org.standclear.core.allocation.Turn;

/** What a plan is judged by, as sums that the solver makes small. */
final class SatLevels {

    private final AskedFor plan;
    private final CpModel model;
    private final Problem problem;
    private final Supplier<LinearExprBuilder> toolChanges;
    private final List<Following> following = new ArrayList<>();

    /** A number that follows from the plan's truth values, so that a known plan can be handed over whole. */
    private record Following(IntVar number, ToLongFunction<ToLongFunction<IntVar>> value) {}

    SatLevels(SatModel plan) {
        this(plan, () -> new SatTools(plan).sum());
    }

    /** Tool changes are counted slot by slot, or by blocks. */
    SatLevels(AskedFor plan, Supplier<LinearExprBuilder> toolChanges) {
        this.plan = plan;
        this.toolChanges = toolChanges;
        this.model = plan.model();
        this.problem = plan.problem();
    }

    /** The stages in order; each adds what it needs to the model when it is asked for. */
    List<Supplier<SatStage>> stages() {
        return List.of(
                () -> stage(Level.MAKE_UPS, Level.UNDER_MINIMUM, Level.UNPLACED),
                () -> stage(Level.UNFAIRNESS),
                () -> stage(Level.MOVED, Level.WISHES),
                () -> stage(Level.TOOL_CHANGES));
    }

    /** Hands a known plan to the solver: its own numbers, and those that follow from them. */
    void hint(Iterable<? extends IntVar> numbers, ToLongFunction<IntVar> known) {
        hint(model, numbers, known);
    }

    /** The same for a model that began as a copy. */
    void hint(CpModel copy, Iterable<? extends IntVar> numbers, ToLongFunction<IntVar> known) {
        copy.clearHints();
        numbers.forEach(one -> copy.addHint(one, known.applyAsLong(one)));
        following.forEach(one -> copy.addHint(one.number(), one.value().applyAsLong(known)));
    }

    private static long count(List<IntVar> taken, ToLongFunction<IntVar> known) {
        return taken.stream().mapToLong(known).sum();
    }

    private SatStage stage(Level... levels) {
        List<Part> parts = new ArrayList<>();
        long weight = 1;
        for (int index = levels.length - 1; index >= 0; index--) {
            long most = most(levels[index]);
            parts.add(0, new Part(levels[index], sum(levels[index]), weight, most));
            weight *= most + 1;
        }
        return new SatStage(parts);
    }

    /** The most that a level can come to. */
    private long most(Level level) {
        return switch (level) {
            case MAKE_UPS -> problem.turns().stream().filter(Turn::makeUp).count();
            case UNDER_MINIMUM -> problem.owed().size();
            case UNPLACED -> problem.turns().size();
            case UNFAIRNESS -> Shares.of(problem.asked().values()).scale();
            case MOVED ->
                problem.turns().stream().filter(turn -> turn.standing() != null).count();
            case WISHES ->
                problem.turns().stream()
                        .mapToLong(turn -> turn.times().wishes().size())
                        .sum();
            case TOOL_CHANGES -> problem.slots().size();
        };
    }

    private LinearExprBuilder sum(Level level) {
        return switch (level) {
            case MAKE_UPS -> leftOut(true);
            case UNDER_MINIMUM -> underMinimum();
            case UNPLACED -> leftOut(false);
            case UNFAIRNESS -> unfairness();
            case MOVED -> moved();
            case WISHES -> wishes();
            case TOOL_CHANGES -> toolChanges.get();
        };
    }

    private LinearExprBuilder leftOut(boolean onlyMakeUps) {
        LinearExprBuilder sum = LinearExpr.newBuilder();
        for (Group<?> group : plan.alike()) {
            if (group.one().makeUp() || !onlyMakeUps) {
                sum.add(group.turns().size());
                group.taken().forEach(taken -> sum.addTerm(taken, -1));
            }
        }
        return sum;
    }

    private Map<String, List<IntVar>> byOperator() {
        Map<String, List<IntVar>> taken = new java.util.TreeMap<>();
        for (Group<?> group : plan.alike()) {
            taken.computeIfAbsent(group.one().operator(), key -> new ArrayList<>())
                    .addAll(group.taken());
        }
        return taken;
    }

    private LinearExprBuilder underMinimum() {
        LinearExprBuilder sum = LinearExpr.newBuilder();
        Map<String, List<IntVar>> taken = byOperator();
        new java.util.TreeMap<>(problem.owed()).forEach((operator, owed) -> {
            if (owed <= 0) {
                return;
            }
            BoolVar under = model.newBoolVar("");
            LinearExprBuilder got = LinearExpr.newBuilder().addTerm(under, owed);
            taken.getOrDefault(operator, List.of()).forEach(got::add);
            model.addGreaterOrEqual(got, owed);
            sum.add(under);
            List<IntVar> own = taken.getOrDefault(operator, List.of());
            following.add(new Following(under, known -> count(own, known) < owed ? 1 : 0));
        });
        return sum;
    }

    private LinearExprBuilder unfairness() {
        Map<String, Integer> asked = problem.asked();
        Shares shares = Shares.of(asked.values());
        IntVar largest = model.newIntVar(0, shares.scale(), "");
        IntVar smallest = model.newIntVar(0, shares.scale(), "");
        List<ToLongFunction<ToLongFunction<IntVar>>> shared = new ArrayList<>();
        byOperator().forEach((operator, taken) -> {
            LinearExprBuilder share = LinearExpr.newBuilder();
            long each = shares.oneOf(asked.getOrDefault(operator, 1));
            taken.forEach(one -> share.addTerm(one, each));
            model.addGreaterOrEqual(largest, share);
            model.addLessOrEqual(smallest, share);
            shared.add(known -> each * count(taken, known));
        });
        following.add(new Following(
                largest,
                known -> shared.stream()
                        .mapToLong(one -> one.applyAsLong(known))
                        .max()
                        .orElse(0)));
        following.add(new Following(
                smallest,
                known -> shared.stream()
                        .mapToLong(one -> one.applyAsLong(known))
                        .min()
                        .orElse(0)));
        return LinearExpr.newBuilder().add(largest).addTerm(smallest, -1);
    }

    private LinearExprBuilder moved() {
        LinearExprBuilder sum = LinearExpr.newBuilder();
        for (Group<?> group : plan.alike()) {
            Placed standing = group.one().standing();
            if (standing == null) {
                continue;
            }
            sum.add(1);
            for (int place = 0; place < group.places().size(); place++) {
                if (group.places().get(place).cell().equals(standing.cell())
                        && group.places().get(place).span().equals(standing.span())) {
                    sum.addTerm(group.taken().get(place), -1);
                }
            }
        }
        return sum;
    }

    private LinearExprBuilder wishes() {
        LinearExprBuilder sum = LinearExpr.newBuilder();
        for (Group<?> group : plan.alike()) {
            for (int place = 0; place < group.places().size(); place++) {
                var there = group.places().get(place);
                int passed = group.one().times().wishesPassed(there.cell(), there.span());
                if (passed > 0) {
                    sum.addTerm(group.taken().get(place), passed);
                }
            }
        }
        return sum;
    }
}
