package org.standclear.booking.allocation.solver;

import com.google.ortools.sat.BoolVar;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.standclear.booking.allocation.solver.AskedFor.Group;
import org.standclear.booking.allocation.solver.SatModel.Attending;
import org.standclear.booking.allocation.solver.SatModel.Run;
import org.standclear.core.allocation.Place;
import org.standclear.core.allocation.Placed;
import org.standclear.core.allocation.Plan;

/** Turns truth values back into a plan. */
final class ReadPlan {

    private final SatModel model;
    private final Set<BoolVar> taken;
    private final Map<Run, List<String>> pool = new HashMap<>();

    ReadPlan(SatModel model, Set<BoolVar> taken) {
        this.model = model;
        this.taken = taken;
        model.attending().forEach((run, could) -> pool.put(run, standing(could)));
    }

    private List<String> standing(List<Attending> could) {
        return new ArrayList<>(could.stream()
                .filter(one -> taken.contains(one.stands()))
                .map(Attending::person)
                .toList());
    }

    Plan plan() {
        List<Placed> placed = new ArrayList<>();
        for (Group<BoolVar> group : model.alike()) {
            int next = 0;
            for (int place = 0; place < group.places().size(); place++) {
                if (taken.contains(group.taken().get(place))) {
                    var turn = group.turns().get(next++);
                    Place there = group.places().get(place);
                    placed.add(
                            new Placed(turn.id(), there.cell(), there.span(), attendant(turn.partner(), group, there)));
                }
            }
        }
        return new Plan(placed);
    }

    private String attendant(@Nullable String partner, Group<BoolVar> group, Place there) {
        if (partner != null) {
            return partner;
        }
        List<String> standing = pool.getOrDefault(SatModel.run(group.one(), there), List.of());
        return standing.remove(0);
    }
}
