package org.standclear.platform.retention;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;

/** Ids that are read when somebody first asks, and then no more: most looks at what is due ask of a few kinds only. */
public final class OnDemand {

    private final Supplier<List<UUID>> source;
    private @Nullable Set<UUID> read;

    /** From a query that may be a long one. */
    public OnDemand(Supplier<List<UUID>> source) {
        this.source = source;
    }

    /** Whether the id is among them. */
    public boolean contains(UUID id) {
        Set<UUID> known = read;
        if (known == null) {
            known = new HashSet<>(source.get());
            read = known;
        }
        return known.contains(id);
    }
}
