package org.standclear.booking.allocation.solver;

import com.google.ortools.sat.BoolVar;
import com.google.ortools.sat.CpModel;
import com.google.ortools.sat.LinearExpr;
import com.google.ortools.sat.LinearExprBuilder;
import com.google.ortools.sat.Literal;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.standclear.core.allocation.Attendant;
import org.standclear.core.allocation.Place;
import org.standclear.core.allocation.Placed;
import org.standclear.core.allocation.Places;
import org.standclear.core.allocation.Plan;
import org.standclear.core.allocation.Problem;
import org.standclear.core.allocation.Span;
import org.standclear.core.allocation.Turn;

/**
 * The rules of a plan as the solver reads them: one truth value for each place that a turn could have and for each run
 * that an attendant could stand at. Turns that differ in nothing but their id share their truth values, so that the
 * solver need not tell them apart.
 */
final class SatModel implements AskedFor {

    private final CpModel model = new CpModel();
    private final Problem problem;
    private final Function<Turn, List<Place>> some;
    private final Places places;
    private final List<Group<BoolVar>> groups;
    private final Map<Run, List<Attending>> attending = new LinkedHashMap<>();

    /** A run of which it does not matter who operates: its e-stop wants somebody of the pool. */
    record Run(String cell, Span span, boolean helper) {}

    /** That the person stands at a run's e-stop. */
    record Attending(String person, BoolVar stands) {}

    SatModel(Problem problem, Places places) {
        this(problem, places::of, places);
    }

    /** Of places that turns could have, only some. */
    SatModel(Problem problem, Function<Turn, List<Place>> some, Places places) {
        this.problem = problem;
        this.some = some;
        this.places = places;
        this.groups = groups();
        eachTurnOnce();
        eachSlotOnce();
        attendants();
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
    public List<Group<BoolVar>> alike() {
        return groups;
    }

    Map<Run, List<Attending>> attending() {
        return attending;
    }

    /** Every truth value of the plan itself. */
    void forEach(Consumer<BoolVar> what) {
        groups.forEach(group -> group.taken().forEach(what));
        attending.values().forEach(could -> could.forEach(one -> what.accept(one.stands())));
    }

    /** The truth values that are true in a plan. */
    Set<BoolVar> taken(Plan known) {
        Map<String, Placed> byTurn =
                known.placed().stream().collect(Collectors.toMap(Placed::turn, Function.identity()));
        Set<BoolVar> taken = new HashSet<>();
        for (Group<BoolVar> group : groups) {
            for (Turn turn : group.turns()) {
                Placed placed = byTurn.get(turn.id());
                if (placed != null) {
                    taken.addAll(taken(group, placed));
                }
            }
        }
        return taken;
    }

    private List<BoolVar> taken(Group<BoolVar> group, Placed placed) {
        List<BoolVar> taken = new ArrayList<>();
        for (int place = 0; place < group.places().size(); place++) {
            Place there = group.places().get(place);
            if (there.cell().equals(placed.cell()) && there.span().equals(placed.span())) {
                taken.add(group.taken().get(place));
                if (group.one().partner() == null) {
                    attending.getOrDefault(run(group.one(), there), List.of()).stream()
                            .filter(one -> one.person().equals(placed.attendant()))
                            .forEach(one -> taken.add(one.stands()));
                }
            }
        }
        return taken;
    }

    static Run run(Turn turn, Place place) {
        return new Run(place.cell(), place.span(), turn.work().helper());
    }

    private List<Group<BoolVar>> groups() {
        Map<Turn, List<Turn>> alike = new LinkedHashMap<>();
        for (Turn turn : problem.turns()) {
            alike.computeIfAbsent(turn.kind(), one -> new ArrayList<>()).add(turn);
        }
        List<Group<BoolVar>> made = new ArrayList<>();
        for (List<Turn> turns : alike.values()) {
            List<Place> could = some.apply(turns.get(0));
            List<BoolVar> taken = new ArrayList<>();
            for (int place = 0; place < could.size(); place++) {
                taken.add(model.newBoolVar(""));
            }
            made.add(new Group<>(List.copyOf(turns), could, List.copyOf(taken)));
        }
        return List.copyOf(made);
    }

    private void eachTurnOnce() {
        for (Group<BoolVar> group : groups) {
            if (group.turns().size() == 1) {
                model.addAtMostOne(group.taken().toArray(new BoolVar[0]));
            } else {
                model.addLessOrEqual(group.placed(), group.turns().size());
            }
        }
    }

    private void eachSlotOnce() {
        List<List<Literal>> bySlot = new ArrayList<>();
        problem.slots().forEach(slot -> bySlot.add(new ArrayList<>()));
        for (Group<BoolVar> group : groups) {
            for (int place = 0; place < group.places().size(); place++) {
                for (int slot : group.places().get(place).slots()) {
                    bySlot.get(slot).add(group.taken().get(place));
                }
            }
        }
        bySlot.stream().filter(literals -> literals.size() > 1).forEach(model::addAtMostOne);
    }

    /** A run without a partner needs one of the pool. */
    private void attendants() {
        Map<Run, List<BoolVar>> runs = new LinkedHashMap<>();
        for (Group<BoolVar> group : groups) {
            if (group.one().partner() != null) {
                continue;
            }
            for (int place = 0; place < group.places().size(); place++) {
                runs.computeIfAbsent(run(group.one(), group.places().get(place)), key -> new ArrayList<>())
                        .add(group.taken().get(place));
            }
        }
        runs.forEach((run, operated) -> {
            List<Attending> could = new ArrayList<>();
            LinearExprBuilder balance = LinearExpr.newBuilder();
            for (Attendant attendant : places.pool(run.cell(), run.span(), run.helper())) {
                BoolVar stands = model.newBoolVar("");
                could.add(new Attending(attendant.person(), stands));
                balance.add(stands);
            }
            operated.forEach(taken -> balance.addTerm(taken, -1));
            model.addEquality(balance, 0);
            attending.put(run, List.copyOf(could));
        });
    }

    private record Taking(Span span, Literal literal) {}

    private void nobodyInTwoPlaces() {
        Map<String, List<Taking>> byPerson = new HashMap<>();
        for (Group<BoolVar> group : groups) {
            for (int place = 0; place < group.places().size(); place++) {
                Taking taking = new Taking(
                        group.places().get(place).span(), group.taken().get(place));
                byPerson.computeIfAbsent(group.one().operator(), key -> new ArrayList<>())
                        .add(taking);
                String partner = group.one().partner();
                if (partner != null) {
                    byPerson.computeIfAbsent(partner, key -> new ArrayList<>()).add(taking);
                }
            }
        }
        attending.forEach((run, could) ->
                could.forEach(one -> byPerson.computeIfAbsent(one.person(), key -> new ArrayList<>())
                        .add(new Taking(run.span(), one.stands()))));
        new java.util.TreeMap<>(byPerson).values().forEach(this::atMostOneAtATime);
    }

    /** Of spans that have an instant in common, all have the start of the latest of them in common. */
    private void atMostOneAtATime(List<Taking> takings) {
        TreeSet<Instant> starts = new TreeSet<>();
        takings.forEach(taking -> starts.add(taking.span().from()));
        for (Instant start : starts) {
            List<Literal> then = takings.stream()
                    .filter(taking -> !taking.span().from().isAfter(start)
                            && taking.span().until().isAfter(start))
                    .map(Taking::literal)
                    .toList();
            if (then.size() > 1) {
                model.addAtMostOne(then);
            }
        }
    }
}
