package org.standclear.core.allocation;

import java.util.Set;

/**
 * A cell that has slots to share out.
 *
 * @param tools tools that it can carry
 * @param fitted the tool that it carries when the window opens
 * @param features what it offers beyond the usual, as a lower bench
 */
public record Bench(String cell, Set<String> tools, String fitted, Set<String> features) {

    public Bench {
        tools = Set.copyOf(tools);
        features = Set.copyOf(features);
        if (!tools.contains(fitted)) {
            throw new IllegalArgumentException(cell + " carries a tool that it cannot carry");
        }
    }

    /** Whether the work can be done there. */
    public boolean fits(Work work) {
        return tools.contains(work.tool()) && features.containsAll(work.needs());
    }
}
