package org.standclear.booking.allocation.solver;

import com.google.ortools.sat.CpModel;
import com.google.ortools.sat.IntVar;
import com.google.ortools.sat.LinearExpr;
import com.google.ortools.sat.LinearExprBuilder;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Predicate;
import org.standclear.core.allocation.Attendant;
import org.standclear.core.allocation.Place;
import org.standclear.core.allocation.Placed;
import org.standclear.core.allocation.Places;
import org.standclear.core.allocation.Plan;
import org.standclear.core.allocation.Problem;
import org.standclear.core.allocation.Span;
import org.standclear.core.allocation.Turn;

/**
 * How many turns of each kind are in each block of slots, and who attends how many there. Every plan gives such numbers
 * and none of the rules here forbids those of a plan, so that what these numbers cannot better no plan can; what they let
 * go of is only the order within a block.
 */
final class BlockModel implements AskedFor {

    private final CpModel model = new CpModel();
    private final Problem problem;
    private final Places places;
    private final Blocks blocks;
    private final PeopleTime time = new PeopleTime(model);
    private final List<Group<IntVar>> groups = new ArrayList<>();
    private final Map<Turn, List<Option>> options = new LinkedHashMap<>();
    private final Map<Stop, Map<String, Standing>> attending = new LinkedHashMap<>();

    /**
     * Where turns of a kind could be.
     *
     * @param blocks one for each slot that a turn takes
     * @param places all in these blocks
     */
    record Option(Turn kind, List<Integer> blocks, List<Place> places, IntVar number) {}

    /** E-stops of a block that it does not matter who operates at. */
    private record Stop(List<Integer> blocks, int minutes, boolean helper) {}

    /** Who stands at e-stops: how often, and the spans that each of it can be in. */
    private record Standing(IntVar number, Set<Span> spans) {}

    BlockModel(Problem problem, Places places, Blocks blocks) {
        this(problem, places, blocks, span -> true);
    }

    /** Only in some times turns without a partner look for attendants: in others there is one for everybody. */
    BlockModel(Problem problem, Places places, Blocks blocks, Predicate<Span> attended) {
        this.problem = problem;
        this.places = places;
        this.blocks = blocks;
        Map<Turn, List<Turn>> alike = new LinkedHashMap<>();
        problem.turns()
                .forEach(turn -> alike.computeIfAbsent(turn.kind(), kind -> new ArrayList<>())
                        .add(turn));
        alike.forEach(this::add);
        eachSlotOnce();
        options.values()
                .forEach(all -> all.stream()
                        .filter(option -> option.kind().partner() == null)
                        .filter(option -> attended.test(option.places().get(0).span()))
                        .forEach(this::attend));
        attended();
        nobodyInTwoPlaces();
    }

    @Override
    public CpModel model() {
        return model;
    }

    @Override
    public Problem problem() {
        return problem;
    }

    @Override
    public List<Group<IntVar>> alike() {
        return groups;
    }

    Blocks blocks() {
        return blocks;
    }

    /** Where turns of that kind could be. */
    List<Option> options(Turn turn) {
        return options.getOrDefault(turn.kind(), List.of());
    }

    /** Where any turns could be. */
    List<Option> options() {
        return options.values().stream().flatMap(List::stream).toList();
    }

    /** Who stands at e-stops there, and the number of how often, for turns without a partner. */
    Map<String, IntVar> standing(Option option) {
        Map<String, IntVar> standing = new TreeMap<>();
        attending.getOrDefault(stop(option), Map.of()).forEach((person, one) -> standing.put(person, one.number()));
        return standing;
    }

    /** What the numbers come to in a plan. */
    Map<IntVar, Long> values(Plan plan) {
        Map<String, Placed> byTurn = new LinkedHashMap<>();
        plan.placed().forEach(placed -> byTurn.put(placed.turn(), placed));
        Map<IntVar, Long> values = new LinkedHashMap<>();
        forEach(number -> values.put(number, 0L));
        for (Turn turn : problem.turns()) {
            Placed placed = byTurn.get(turn.id());
            if (placed != null) {
                options(turn).stream().filter(option -> holds(option, placed)).forEach(option -> {
                    values.merge(option.number(), 1L, Long::sum);
                    Standing stands =
                            attending.getOrDefault(stop(option), Map.of()).get(placed.attendant());
                    if (turn.partner() == null && stands != null) {
                        values.merge(stands.number(), 1L, Long::sum);
                    }
                });
            }
        }
        return values;
    }

    private static boolean holds(Option option, Placed placed) {
        return option.places().stream()
                .anyMatch(place ->
                        place.cell().equals(placed.cell()) && place.span().equals(placed.span()));
    }

    /** Every number of the plan itself. */
    void forEach(java.util.function.Consumer<IntVar> what) {
        options.values().forEach(all -> all.forEach(option -> what.accept(option.number())));
        attending.values().forEach(people -> people.values().forEach(one -> what.accept(one.number())));
    }

    private void add(Turn kind, List<Turn> turns) {
        Map<List<Integer>, List<Place>> byBlocks = new LinkedHashMap<>();
        for (Place place : places.of(kind)) {
            byBlocks.computeIfAbsent(blocks.of(place), key -> new ArrayList<>()).add(place);
        }
        List<Option> all = new ArrayList<>();
        List<Place> least = new ArrayList<>();
        byBlocks.forEach((in, there) -> {
            all.add(new Option(kind, in, there, model.newIntVar(0, Math.min(turns.size(), there.size()), "")));
            least.add(there.stream()
                    .min(Comparator.comparing((Place place) -> kind.isMovedTo(place.cell(), place.span()))
                            .thenComparing(place -> kind.times().wishesPassed(place.cell(), place.span())))
                    .orElseThrow());
        });
        options.put(kind, all);
        Group<IntVar> group =
                new Group<>(turns, least, all.stream().map(Option::number).toList());
        groups.add(group);
        model.addLessOrEqual(group.placed(), turns.size());
    }

    private void eachSlotOnce() {
        List<LinearExprBuilder> taken = new ArrayList<>();
        for (int block = 0; block < blocks.count(); block++) {
            taken.add(LinearExpr.newBuilder());
        }
        options.values()
                .forEach(all -> all.forEach(option ->
                        option.blocks().forEach(block -> taken.get(block).add(option.number()))));
        for (int block = 0; block < blocks.count(); block++) {
            model.addLessOrEqual(taken.get(block), blocks.slots(block).size());
        }
    }

    private static Stop stop(Option option) {
        return new Stop(
                option.blocks(),
                option.kind().work().minutes(),
                option.kind().work().helper());
    }

    private void attend(Option option) {
        Map<String, Standing> people = attending.computeIfAbsent(stop(option), key -> new TreeMap<>());
        for (Place place : option.places()) {
            for (Attendant one :
                    places.pool(place.cell(), place.span(), option.kind().work().helper())) {
                people.computeIfAbsent(
                                one.person(),
                                person -> new Standing(model.newIntVar(0, most(option), ""), new HashSet<>()))
                        .spans()
                        .add(place.span());
            }
        }
    }

    private int most(Option option) {
        return blocks.slots(option.blocks().get(0)).size();
    }

    /** As many stand at e-stops as turns need it. */
    private void attended() {
        Map<Stop, LinearExprBuilder> balances = new LinkedHashMap<>();
        options.values()
                .forEach(all -> all.stream()
                        .filter(option -> option.kind().partner() == null && attending.containsKey(stop(option)))
                        .forEach(option -> balances.computeIfAbsent(stop(option), key -> LinearExpr.newBuilder())
                                .addTerm(option.number(), -1)));
        balances.forEach((stop, balance) -> {
            attending.getOrDefault(stop, Map.of()).values().forEach(one -> balance.add(one.number()));
            model.addEquality(balance, 0);
        });
    }

    private void nobodyInTwoPlaces() {
        options.values()
                .forEach(all -> all.forEach(option -> {
                    Set<Span> spans = new HashSet<>();
                    option.places().forEach(place -> spans.add(place.span()));
                    time.operates(option.kind(), option.blocks(), spans, option.number());
                }));
        attending.forEach((stop, people) ->
                people.forEach((person, one) -> time.attends(person, stop.blocks(), one.spans(), one.number())));
        time.addRules();
    }
}
