package org.standclear.booking.allocation;

import com.google.ortools.sat.ConstraintProto;
import com.google.ortools.sat.CpModelProto;
import com.google.ortools.sat.CpObjectiveProto;
import com.google.ortools.sat.IntegerVariableProto;
import com.google.ortools.sat.LinearConstraintProto;
import java.util.List;
import java.util.Set;
import org.chocosolver.solver.Model;
import org.chocosolver.solver.Solver;
import org.chocosolver.solver.constraints.Constraint;
import org.chocosolver.solver.search.limits.FailCounter;
import org.chocosolver.solver.search.loop.lns.INeighborFactory;
import org.chocosolver.solver.search.loop.lns.neighbors.INeighbor;
import org.chocosolver.solver.search.strategy.Search;
import org.chocosolver.solver.variables.BoolVar;
import org.chocosolver.solver.variables.IntVar;

/** A model that was made for CP-SAT, rule by rule in Choco. */
final class ChocoReading {

    private final Model model = new Model("allocation");
    private final IntVar[] numbers;
    private final Set<Integer> known;
    private final IntVar objective;

    /** How Choco looks: as it does by itself, or round the plan it was given and the best since. */
    enum Way {
        PLAIN,
        HINTED,
        NEIGHBOURS
    }

    ChocoReading(CpModelProto read, Set<Integer> known) {
        this.known = known;
        numbers = new IntVar[read.getVariablesCount()];
        for (int i = 0; i < numbers.length; i++) {
            numbers[i] = number(i, read.getVariables(i));
        }
        read.getConstraintsList().forEach(this::post);
        objective = objective(read.getObjective());
    }

    private IntVar number(int index, IntegerVariableProto read) {
        int least = Math.toIntExact(read.getDomain(0));
        int most = Math.toIntExact(read.getDomain(read.getDomainCount() - 1));
        return least == 0 && most == 1
                ? model.boolVar("b" + index)
                : model.intVar("n" + index, least, most, true);
    }

    private BoolVar literal(int reference) {
        return reference >= 0
                ? numbers[reference].asBoolVar()
                : numbers[-reference - 1].asBoolVar().not();
    }

    private BoolVar[] literals(List<Integer> references) {
        return references.stream().map(this::literal).toArray(BoolVar[]::new);
    }

    private void post(ConstraintProto read) {
        if (read.hasAtMostOne()) {
            model.sum(literals(read.getAtMostOne().getLiteralsList()), "<=", 1).post();
        } else if (read.hasLinear()) {
            linear(read.getLinear(), read.getEnforcementLiteralList());
        } else if (read.hasBoolOr() && read.getEnforcementLiteralCount() == 0) {
            model.sum(literals(read.getBoolOr().getLiteralsList()), ">=", 1).post();
        } else {
            throw new IllegalArgumentException("a rule of a kind that is not read: " + read);
        }
    }

    private void linear(LinearConstraintProto read, List<Integer> when) {
        IntVar[] of = read.getVarsList().stream().map(index -> numbers[index]).toArray(IntVar[]::new);
        int[] by = read.getCoeffsList().stream().mapToInt(Math::toIntExact).toArray();
        long least = read.getDomain(0);
        long most = read.getDomain(read.getDomainCount() - 1);
        if (least == most) {
            enforce(model.scalar(of, by, "=", Math.toIntExact(least)), when);
            return;
        }
        if (least > Integer.MIN_VALUE) {
            enforce(model.scalar(of, by, ">=", Math.toIntExact(least)), when);
        }
        if (most < Integer.MAX_VALUE) {
            enforce(model.scalar(of, by, "<=", Math.toIntExact(most)), when);
        }
    }

    private void enforce(Constraint rule, List<Integer> when) {
        if (when.isEmpty()) {
            rule.post();
        } else {
            model.ifThen(model.and(literals(when)), rule);
        }
    }

    private IntVar objective(CpObjectiveProto read) {
        int count = read.getVarsCount();
        IntVar[] of = new IntVar[count + 1];
        int[] by = new int[count + 1];
        long most = (long) read.getOffset();
        for (int i = 0; i < count; i++) {
            of[i] = numbers[read.getVars(i)];
            by[i] = Math.toIntExact(read.getCoeffs(i));
            most += Math.max(0L, (long) by[i] * of[i].getUB());
        }
        IntVar sum = model.intVar("objective", 0, Math.toIntExact(most), true);
        of[count] = sum;
        by[count] = -1;
        model.scalar(of, by, "=", -(int) read.getOffset()).post();
        return sum;
    }

    void solve(Way way, int seconds) {
        SolverComparison.Course course = new SolverComparison.Course();
        Solver solver = model.getSolver();
        model.setObjective(Model.MINIMIZE, objective);
        if (way != Way.PLAIN) {
            for (int i = 0; i < numbers.length; i++) {
                if (numbers[i].isBool()) {
                    solver.addHint(numbers[i], known.contains(i) ? 1 : 0);
                }
            }
        }
        if (way == Way.NEIGHBOURS) {
            Search.defaultSearch(model);
            INeighbor neighbours = INeighborFactory.random(numbers);
            solver.setLNS(neighbours, new FailCounter(model, 200));
        }
        solver.limitTime(seconds + "s");
        while (solver.solve()) {
            course.found(objective.getValue());
        }
        course.over(
                solver.isStopCriterionMet() ? "stopped by the clock" : "searched through",
                solver.getObjectiveManager().getBestLB().longValue());
    }
}
