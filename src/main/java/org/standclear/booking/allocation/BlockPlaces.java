package org.standclear.booking.allocation;

import com.google.ortools.sat.BoolVar;
import com.google.ortools.sat.IntVar;
import com.google.ortools.sat.LinearExpr;
import com.google.ortools.sat.LinearExprBuilder;
import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import java.util.function.Supplier;
import org.standclear.booking.allocation.AskedFor.Group;
import org.standclear.booking.allocation.BlockModel.Option;
import org.standclear.booking.allocation.SatSearch.Ending;
import org.standclear.core.allocation.Level;
import org.standclear.core.allocation.Place;
import org.standclear.core.allocation.Places;
import org.standclear.core.allocation.Plan;
import org.standclear.core.allocation.Turn;

/**
 * Looks for a plan that is as good as numbers of turns in blocks: a slot for each turn, and who attends. It need not have
 * the same numbers, but the nearer the better, since near them nearly everything fits already.
 */
final class BlockPlaces {

    private final BlockModel blocks;
    private final Map<IntVar, Long> numbers;
    private final Places places;
    private double worked;

    BlockPlaces(BlockModel blocks, Map<IntVar, Long> numbers, Places places) {
        this.blocks = blocks;
        this.numbers = numbers;
        this.places = places;
    }

    /** What the solver has done, in its own measure. */
    double worked() {
        return worked;
    }

    /** Whether a block has turns with the same tool, of those that are said to be there. */
    Predicate<Option> withTheSameTools() {
        Map<Integer, Set<String>> used = new HashMap<>();
        for (Group<IntVar> group : blocks.alike()) {
            for (Option option : blocks.options(group.one())) {
                if (number(option) > 0) {
                    option.blocks()
                            .forEach(block -> used.computeIfAbsent(block, key -> new HashSet<>())
                                    .add(option.kind().work().tool()));
                }
            }
        }
        return option -> option.blocks().stream()
                .allMatch(block -> !used.containsKey(block)
                        || used.get(block).contains(option.kind().work().tool()));
    }

    private long number(Option option) {
        return numbers.getOrDefault(option.number(), 0L);
    }

    /**
     * A plan that is as good as said on the levels that are said; empty when none is found with so much work.
     *
     * @param could turns are looked for only there
     */
    Optional<Plan> find(Map<Level, Long> held, Predicate<Option> could, double work, Ending ending) {
        SatModel model = new SatModel(
                blocks.problem(),
                kind -> blocks.options(kind).stream()
                        .filter(could)
                        .flatMap(option -> option.places().stream())
                        .toList(),
                places);
        for (Supplier<SatStage> next : new SatLevels(model).stages()) {
            for (SatStage.Part part : next.get().parts()) {
                Long most = held.get(part.level());
                if (most != null) {
                    model.model().addLessOrEqual(part.sum(), most);
                }
            }
        }
        LinearExprBuilder far = LinearExpr.newBuilder();
        model.alike().forEach(group -> addDistance(group, model, far));
        model.model().minimize(far);
        SatRun run = new SatRun(model.model(), SatRun.Way.FIRST, work, ending, null);
        worked += run.worked();
        if (!run.hasSolution()) {
            return Optional.empty();
        }
        Set<BoolVar> taken = new HashSet<>();
        model.forEach(one -> {
            if (run.value(one) == 1) {
                taken.add(one);
            }
        });
        return Optional.of(new ReadPlan(model, taken).plan());
    }

    /** How many more turns of the group are somewhere than the numbers say. */
    private void addDistance(Group<BoolVar> group, SatModel model, LinearExprBuilder far) {
        Map<Place, BoolVar> taken = new HashMap<>();
        for (int place = 0; place < group.places().size(); place++) {
            taken.put(group.places().get(place), group.taken().get(place));
        }
        Turn kind = group.one();
        for (Option option : blocks.options(kind)) {
            LinearExprBuilder there = LinearExpr.newBuilder();
            option.places().stream().filter(taken::containsKey).forEach(place -> there.add(taken.get(place)));
            if (number(option) == 0) {
                far.add(there);
            } else {
                IntVar more = model.model().newIntVar(0, group.turns().size(), "");
                model.model().addLessOrEqual(there.addTerm(more, -1), number(option));
                far.add(more);
            }
        }
    }
}
