package org.standclear.booking.allocation.solver;

import com.google.ortools.sat.BoolVar;
import com.google.ortools.sat.CpModel;
import com.google.ortools.sat.LinearExpr;
import com.google.ortools.sat.LinearExprBuilder;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import java.util.stream.IntStream;
import org.standclear.booking.allocation.solver.AskedFor.Group;
import org.standclear.core.allocation.Bench;
import org.standclear.core.allocation.FreeSlot;
import org.standclear.core.allocation.Problem;
import org.standclear.core.allocation.Turn;

/** Tool changes counted slot by slot. */
final class SatTools {

    private final SatModel plan;
    private final CpModel model;
    private final Problem problem;
    private final Map<String, String> atTheEnd;

    SatTools(SatModel plan) {
        this(plan, Map.of());
    }

    /** The same with a change at the end for each cell that does not carry a certain tool then. */
    SatTools(SatModel plan, Map<String, String> atTheEnd) {
        this.plan = plan;
        this.atTheEnd = Map.copyOf(atTheEnd);
        this.model = plan.model();
        this.problem = plan.problem();
    }

    /** The sum of all changes; adds what it needs to the model. */
    LinearExprBuilder sum() {
        LinearExprBuilder sum = LinearExpr.newBuilder();
        for (Bench bench : problem.benches()) {
            TreeSet<String> tools = new TreeSet<>();
            problem.turns().stream().map(Turn::work).filter(bench::fits).forEach(work -> tools.add(work.tool()));
            if (tools.isEmpty() || (tools.size() == 1 && tools.contains(bench.fitted()))) {
                continue;
            }
            tools.add(bench.fitted());
            addChanges(bench, List.copyOf(tools), sum);
        }
        return sum;
    }

    /** One truth value for each slot and tool: the cell carries it then. A slot's tool that the slot before had not is a change. */
    private void addChanges(Bench bench, List<String> tools, LinearExprBuilder sum) {
        Map<Integer, List<BoolVar>> carried = new HashMap<>();
        List<BoolVar> before = null;
        for (int slot : slotsOf(bench)) {
            List<BoolVar> now = new ArrayList<>();
            for (int tool = 0; tool < tools.size(); tool++) {
                BoolVar carries = model.newBoolVar("");
                now.add(carries);
                LinearExprBuilder change = LinearExpr.newBuilder().addTerm(carries, -1);
                BoolVar changes = model.newBoolVar("");
                change.add(changes);
                if (before == null) {
                    model.addGreaterOrEqual(change, tools.get(tool).equals(bench.fitted()) ? -1 : 0);
                } else {
                    model.addGreaterOrEqual(change.add(before.get(tool)), 0);
                }
                sum.add(changes);
            }
            model.addExactlyOne(now.toArray(new BoolVar[0]));
            carried.put(slot, now);
            before = now;
        }
        int last = tools.indexOf(atTheEnd.getOrDefault(bench.cell(), ""));
        if (before != null && last >= 0) {
            sum.add(1).addTerm(before.get(last), -1);
        }
        carry(bench, tools, carried);
    }

    private void carry(Bench bench, List<String> tools, Map<Integer, List<BoolVar>> carried) {
        for (Group<BoolVar> group : plan.alike()) {
            int tool = tools.indexOf(group.one().work().tool());
            for (int place = 0; place < group.places().size(); place++) {
                if (!group.places().get(place).cell().equals(bench.cell())) {
                    continue;
                }
                for (int slot : group.places().get(place).slots()) {
                    List<BoolVar> there = carried.get(slot);
                    if (there != null && tool >= 0) {
                        model.addImplication(group.taken().get(place), there.get(tool));
                    }
                }
            }
        }
    }

    private List<Integer> slotsOf(Bench bench) {
        List<FreeSlot> slots = problem.slots();
        return IntStream.range(0, slots.size())
                .filter(slot -> slots.get(slot).cell().equals(bench.cell()))
                .boxed()
                .sorted((one, other) -> slots.get(one)
                        .span()
                        .from()
                        .compareTo(slots.get(other).span().from()))
                .toList();
    }
}
