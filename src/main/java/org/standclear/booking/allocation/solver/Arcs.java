package org.standclear.booking.allocation.solver;

import com.google.ortools.graph.MaxFlow;
import com.google.ortools.graph.MinCostFlow;
import com.google.ortools.graph.MinCostFlowBase;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** The arcs of a flow, with the most that each carries and what a unit costs there; solved by OR-Tools. */
final class Arcs {

    private final List<int[]> ends = new ArrayList<>();
    private final List<Integer> most = new ArrayList<>();
    private final List<Integer> costs = new ArrayList<>();
    private final Map<Long, Integer> single = new HashMap<>();
    private final Map<Integer, int[]> beside = new HashMap<>();

    /** A new arc; its number. */
    int add(int from, int to, int capacity) {
        ends.add(new int[] {from, to});
        most.add(capacity);
        costs.add(0);
        return ends.size() - 1;
    }

    /** An arc for one unit; there is one between two nodes, with the least of the costs that it was given. */
    void one(int from, int to, int cost) {
        Integer known = single.get(((long) from << 32) | to);
        if (known == null) {
            int arc = add(from, to, 1);
            single.put(((long) from << 32) | to, arc);
            costs.set(arc, cost);
        } else {
            costs.set(known, Math.min(costs.get(known), cost));
        }
    }

    void limit(int arc, int capacity) {
        most.set(arc, capacity);
    }

    void cost(int arc, int cost) {
        costs.set(arc, cost);
    }

    /** Another arc between the same nodes, for flows with costs only. */
    void beside(int arc, int capacity, int cost) {
        beside.put(arc, new int[] {capacity, cost});
    }

    /** The most that flows. */
    long most(int source, int sink) {
        MaxFlow flow = new MaxFlow();
        try {
            for (int arc = 0; arc < ends.size(); arc++) {
                flow.addArcWithCapacity(ends.get(arc)[0], ends.get(arc)[1], most.get(arc));
            }
            MaxFlow.Status status = flow.solve(source, sink);
            if (status != MaxFlow.Status.OPTIMAL) {
                throw new IllegalStateException("no flow: " + status);
            }
            return flow.getOptimalFlow();
        } finally {
            flow.delete();
        }
    }

    /** The least that up to so many units cost. */
    long leastCost(int source, int sink, long supply) {
        MinCostFlow flow = new MinCostFlow();
        try {
            for (int arc = 0; arc < ends.size(); arc++) {
                flow.addArcWithCapacityAndUnitCost(ends.get(arc)[0], ends.get(arc)[1], most.get(arc), costs.get(arc));
            }
            beside.forEach((arc, other) ->
                    flow.addArcWithCapacityAndUnitCost(ends.get(arc)[0], ends.get(arc)[1], other[0], other[1]));
            // what stays at home
            flow.addArcWithCapacityAndUnitCost(source, sink, supply, 0);
            flow.setNodeSupply(source, supply);
            flow.setNodeSupply(sink, -supply);
            MinCostFlowBase.Status status = flow.solve();
            if (status != MinCostFlowBase.Status.OPTIMAL) {
                throw new IllegalStateException("no flow: " + status);
            }
            return flow.getOptimalCost();
        } finally {
            flow.delete();
        }
    }
}
