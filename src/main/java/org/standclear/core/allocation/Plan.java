package org.standclear.core.allocation;

import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Who gets which place; turns that are not in it are left out. By start, then cell. */
public record Plan(List<Placed> placed) {

    /** Nobody has a place. */
    public static final Plan EMPTY = new Plan(List.of());

    public Plan {
        placed = placed.stream()
                .sorted(Comparator.comparing((Placed one) -> one.span().from())
                        .thenComparing(Placed::cell)
                        .thenComparing(Placed::turn))
                .toList();
    }

    /** The places of both, of which neither has a turn of the other. */
    public Plan and(Plan other) {
        return new Plan(Stream.concat(placed.stream(), other.placed().stream()).toList());
    }

    /** The places by turn; of a turn that is there twice the first, which the rules of a plan refuse anyway. */
    Map<String, Placed> byTurn() {
        return placed.stream().collect(Collectors.toMap(Placed::turn, Function.identity(), (first, second) -> first));
    }
}
