package org.standclear.booking.allocation.solver;

import com.google.ortools.sat.BoolVar;
import com.google.ortools.sat.IntVar;
import com.google.ortools.sat.LinearExpr;
import com.google.ortools.sat.LinearExprBuilder;
import com.google.ortools.sat.Literal;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import java.util.function.ToLongFunction;
import java.util.stream.Stream;
import org.standclear.booking.allocation.solver.BlockModel.Option;
import org.standclear.core.allocation.Bench;
import org.standclear.core.allocation.Span;
import org.standclear.core.allocation.Turn;
import org.standclear.core.allocation.Work;

/**
 * Tool changes counted by blocks: turns of a block come in the order that changes the tool least, so that there are as many
 * changes in it as tools that it has and the cell did not carry before.
 */
final class BlockTools {

    private final BlockModel plan;
    private final LinearExprBuilder changes = LinearExpr.newBuilder();
    private final List<InBlock> all = new ArrayList<>();
    private final Map<Integer, String> last = new HashMap<>();
    private final Map<Integer, Long> changed = new HashMap<>();

    /** A tool in a block: whether it is carried at the end, whether it is put on in it. */
    private record InBlock(int block, String tool, BoolVar after, BoolVar comes) {}

    BlockTools(BlockModel plan) {
        this.plan = plan;
    }

    /** The sum of all changes; adds what it needs to the model. */
    LinearExprBuilder sum() {
        for (Bench bench : plan.problem().benches()) {
            TreeSet<String> tools = new TreeSet<>();
            plan.problem().turns().stream()
                    .map(Turn::work)
                    .filter(bench::fits)
                    .map(Work::tool)
                    .forEach(tools::add);
            tools.add(bench.fitted());
            if (tools.size() > 1) {
                add(bench, List.copyOf(tools));
            }
        }
        return changes;
    }

    /** Takes what numbers say of the tools. */
    void read(ToLongFunction<BoolVar> valueOf) {
        last.clear();
        changed.clear();
        for (InBlock one : all) {
            if (valueOf.applyAsLong(one.after()) == 1) {
                last.put(one.block(), one.tool());
            }
            changed.merge(one.block(), valueOf.applyAsLong(one.comes()), Long::sum);
        }
    }

    /** What each cell carries at the end of a spell, where that is known. */
    Map<String, String> after(Span spell) {
        Map<String, String> after = new HashMap<>();
        for (Bench bench : plan.problem().benches()) {
            blocks(bench, spell)
                    .filter(last::containsKey)
                    .forEach(block -> after.put(bench.cell(), last.getOrDefault(block, "")));
        }
        return after;
    }

    /** How often tools change in a spell; never where that is not known. */
    long changes(Span spell) {
        return plan.problem().benches().stream()
                .flatMap(bench -> blocks(bench, spell))
                .mapToLong(block -> changed.getOrDefault(block, 0L))
                .sum();
    }

    private Stream<Integer> blocks(Bench bench, Span spell) {
        return plan.blocks().of(bench.cell()).stream()
                .filter(block -> spell.holds(plan.problem()
                        .slots()
                        .get(plan.blocks().slots(block).get(0))
                        .span()));
    }

    private void add(Bench bench, List<String> tools) {
        Map<Integer, Map<String, List<IntVar>>> there = there(bench);
        List<BoolVar> before = null;
        for (int block : plan.blocks().of(bench.cell())) {
            List<BoolVar> used = new ArrayList<>();
            List<BoolVar> after = new ArrayList<>();
            List<BoolVar> comes = new ArrayList<>();
            for (String tool : tools) {
                used.add(plan.model().newBoolVar(""));
                after.add(plan.model().newBoolVar(""));
                comes.add(plan.model().newBoolVar(""));
                all.add(new InBlock(block, tool, after.get(after.size() - 1), comes.get(comes.size() - 1)));
                use(
                        there.getOrDefault(block, Map.of()).getOrDefault(tool, List.of()),
                        block,
                        used.get(used.size() - 1));
                changes.add(comes.get(comes.size() - 1));
            }
            plan.model().addExactlyOne(after.toArray(new Literal[0]));
            link(tools, bench, before, used, after, comes);
            before = after;
        }
    }

    /** The numbers of turns on the cell by block and tool. */
    private Map<Integer, Map<String, List<IntVar>>> there(Bench bench) {
        Map<Integer, Map<String, List<IntVar>>> there = new HashMap<>();
        for (AskedFor.Group<IntVar> group : plan.alike()) {
            for (Option option : plan.options(group.one())) {
                if (option.places().get(0).cell().equals(bench.cell())) {
                    for (int block : new TreeSet<>(option.blocks())) {
                        there.computeIfAbsent(block, key -> new HashMap<>())
                                .computeIfAbsent(group.one().work().tool(), key -> new ArrayList<>())
                                .add(option.number());
                    }
                }
            }
        }
        return there;
    }

    private void use(List<IntVar> numbers, int block, BoolVar used) {
        int most = plan.blocks().slots(block).size();
        LinearExprBuilder all = LinearExpr.newBuilder().addTerm(used, -most);
        numbers.forEach(all::add);
        plan.model().addLessOrEqual(all, 0);
        // each kind by itself says more to the relaxation: whoever has all turns there needs the tool whole
        for (IntVar number : numbers) {
            long own = Math.min(most, number.getDomain().max());
            if (own < most) {
                plan.model().addLessOrEqual(LinearExpr.newBuilder().add(number).addTerm(used, -own), 0);
            }
        }
    }

    /** A tool comes when it is used and was not there, or is there at the end and something else was used. */
    private void link(
            List<String> tools,
            Bench bench,
            @org.jspecify.annotations.Nullable List<BoolVar> before,
            List<BoolVar> used,
            List<BoolVar> after,
            List<BoolVar> comes) {
        for (int tool = 0; tool < tools.size(); tool++) {
            LinearExprBuilder use = LinearExpr.newBuilder().add(comes.get(tool)).addTerm(used.get(tool), -1);
            LinearExprBuilder stay =
                    LinearExpr.newBuilder().add(comes.get(tool)).addTerm(after.get(tool), -1);
            long fitted = before == null && tools.get(tool).equals(bench.fitted()) ? -1 : 0;
            if (before != null) {
                use.add(before.get(tool));
                stay.add(before.get(tool));
            }
            plan.model().addGreaterOrEqual(use, fitted);
            plan.model().addGreaterOrEqual(stay, fitted);
            for (int other = 0; other < tools.size(); other++) {
                if (other != tool) {
                    plan.model()
                            .addGreaterOrEqual(
                                    LinearExpr.newBuilder()
                                            .add(comes.get(tool))
                                            .addTerm(after.get(tool), -1)
                                            .addTerm(used.get(other), -1),
                                    -1);
                }
            }
        }
    }
}
