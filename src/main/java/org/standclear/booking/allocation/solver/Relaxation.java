package org.standclear.booking.allocation.solver;

import com.google.ortools.linearsolver.MPConstraint;
import com.google.ortools.linearsolver.MPSolver;
import com.google.ortools.linearsolver.MPVariable;
import com.google.ortools.sat.ConstraintProto;
import com.google.ortools.sat.CpModelProto;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A model of the solver with fractions allowed (linear programming). Its prices for the rules, rounded to whole parts, give
 * a bound that is exact whatever the linear solver's own rounding: for any prices the least of cost and priced rules
 * together, number by number, is never above the cost of a solution (Lagrange).
 */
final class Relaxation {

    /** Parts of a unit that prices are rounded to. */
    static final long PARTS = 1L << 20;

    /** Parts that come of rounding. */
    private static final long NEARLY = PARTS / 10_000;

    /** What the linear solver means by none. */
    private static final double NOTHING = 1e-6;

    private final CpModelProto model;
    private final List<Row> rows = new ArrayList<>();
    private final long[] cost;
    private final long[] least;
    private final long[] most;

    /** At least so much and at most so much of a weighted sum. */
    private record Row(int[] numbers, long[] weights, long least, long most) {}

    /**
     * What prices prove.
     *
     * @param parts the bound, in parts
     * @param reduced what a unit of each number costs beyond, in parts
     * @param values what each number was in the linear solver's best; empty when prices came from elsewhere
     */
    record Prices(long parts, long[] reduced, double[] values) {

        /** No solution costs less. */
        long bound() {
            return -Math.floorDiv(-parts, PARTS);
        }

        /** Whether the linear solver's best has any of that number. */
        boolean has(int number) {
            return values[number] > NOTHING;
        }

        /** Whether a number costs beyond what it pays for, so that it had better be small. */
        boolean isDear(int number) {
            return reduced[number] > 0;
        }

        /** Whether a number costs next to nothing beyond what it pays for. */
        boolean isNearlyFree(int number) {
            return reduced[number] <= NEARLY;
        }

        /** By how much a number can be away from its cheaper end in a solution that costs at most so much. */
        long slack(int number, long cost) {
            long price = Math.abs(reduced[number]);
            return price == 0 ? Long.MAX_VALUE : Math.max(0, Math.floorDiv(cost * PARTS - parts, price));
        }
    }

    Relaxation(CpModelProto model) {
        this.model = model;
        int count = model.getVariablesCount();
        cost = new long[count];
        least = new long[count];
        most = new long[count];
        for (int number = 0; number < count; number++) {
            var domain = model.getVariables(number);
            least[number] = domain.getDomain(0);
            most[number] = domain.getDomain(domain.getDomainCount() - 1);
        }
        for (int term = 0; term < model.getObjective().getVarsCount(); term++) {
            int number = model.getObjective().getVars(term);
            cost[number < 0 ? -number - 1 : number] +=
                    (number < 0 ? -1 : 1) * model.getObjective().getCoeffs(term);
        }
        model.getConstraintsList().forEach(this::read);
    }

    private void read(ConstraintProto rule) {
        if (rule.getEnforcementLiteralCount() > 0) {
            return;
        }
        if (rule.hasLinear()) {
            var linear = rule.getLinear();
            int[] numbers =
                    linear.getVarsList().stream().mapToInt(Integer::intValue).toArray();
            long[] weights =
                    linear.getCoeffsList().stream().mapToLong(Long::longValue).toArray();
            add(numbers, weights, linear.getDomain(0), linear.getDomain(linear.getDomainCount() - 1), false);
        } else if (rule.hasAtMostOne()) {
            literals(rule.getAtMostOne().getLiteralsList(), Long.MIN_VALUE, 1);
        } else if (rule.hasExactlyOne()) {
            literals(rule.getExactlyOne().getLiteralsList(), 1, 1);
        } else if (rule.hasBoolOr()) {
            literals(rule.getBoolOr().getLiteralsList(), 1, Long.MAX_VALUE);
        }
    }

    private void literals(List<Integer> literals, long from, long until) {
        long[] weights = new long[literals.size()];
        Arrays.fill(weights, 1);
        add(literals.stream().mapToInt(Integer::intValue).toArray(), weights, from, until, true);
    }

    /** A number below zero stands for the negation of another. */
    private void add(int[] numbers, long[] weights, long from, long until, boolean literals) {
        long shift = 0;
        for (int term = 0; term < numbers.length; term++) {
            if (numbers[term] < 0) {
                numbers[term] = -numbers[term] - 1;
                shift += literals ? weights[term] : 0;
                weights[term] = -weights[term];
            }
        }
        rows.add(new Row(numbers, weights, isNone(from) ? from : from - shift, isNone(until) ? until : until - shift));
    }

    private static boolean isNone(long end) {
        return end <= Long.MIN_VALUE / 4 || end >= Long.MAX_VALUE / 4;
    }

    /** The prices; null when the linear solver has none. */
    @Nullable
    Prices solve(double seconds) {
        MPSolver solver = MPSolver.createSolver("GLOP");
        try {
            solver.setTimeLimit((long) (1_000 * Math.max(0.01, seconds)));
            MPVariable[] numbers = new MPVariable[cost.length];
            for (int number = 0; number < cost.length; number++) {
                numbers[number] = solver.makeNumVar(least[number], most[number], "");
                solver.objective().setCoefficient(numbers[number], cost[number]);
            }
            solver.objective().setMinimization();
            List<MPConstraint> priced =
                    rows.stream().map(row -> add(row, solver, numbers)).toList();
            if (solver.solve() != MPSolver.ResultStatus.OPTIMAL) {
                return null;
            }
            Prices proven =
                    proven(priced.stream().mapToDouble(MPConstraint::dualValue).toArray());
            return new Prices(
                    proven.parts(),
                    proven.reduced(),
                    Arrays.stream(numbers)
                            .mapToDouble(MPVariable::solutionValue)
                            .toArray());
        } finally {
            solver.delete();
        }
    }

    private static MPConstraint add(Row row, MPSolver solver, MPVariable[] numbers) {
        MPConstraint one = solver.makeConstraint(
                isNone(row.least()) ? Double.NEGATIVE_INFINITY : row.least(),
                isNone(row.most()) ? Double.POSITIVE_INFINITY : row.most());
        for (int term = 0; term < row.numbers().length; term++) {
            MPVariable number = numbers[row.numbers()[term]];
            one.setCoefficient(number, one.getCoefficient(number) + row.weights()[term]);
        }
        return one;
    }

    /** Any prices will do; good ones prove much. */
    Prices proven(double[] prices) {
        long[] reduced = Arrays.stream(cost).map(one -> one * PARTS).toArray();
        long bound = 0;
        for (int row = 0; row < prices.length; row++) {
            Row one = rows.get(row);
            long price = Math.round(prices[row] * PARTS);
            long end = price > 0 ? one.least() : one.most();
            if (price != 0 && !isNone(end)) {
                bound += price * end;
                for (int term = 0; term < one.numbers().length; term++) {
                    reduced[one.numbers()[term]] -= price * one.weights()[term];
                }
            }
        }
        for (int number = 0; number < reduced.length; number++) {
            bound += Math.min(reduced[number] * least[number], reduced[number] * most[number]);
        }
        return new Prices(bound + Math.round(model.getObjective().getOffset() * PARTS), reduced, new double[0]);
    }
}
