package org.standclear.booking.allocation.solver;

import com.google.ortools.sat.IntVar;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.LongStream;
import org.jspecify.annotations.Nullable;
import org.standclear.booking.allocation.solver.AskedFor.Group;
import org.standclear.booking.allocation.solver.BlockModel.Option;
import org.standclear.core.allocation.Place;
import org.standclear.core.allocation.Placed;
import org.standclear.core.allocation.Span;
import org.standclear.core.allocation.Turn;

/**
 * Turns numbers of a time in which every slot is a block back into places. Where cells have their blocks together, turns
 * take the cells in order of time: as long as no instant has more turns than cells, there is always one (intervals are a
 * perfect graph).
 */
final class ReadNumbers {

    private final BlockModel model;
    private final Map<IntVar, Long> numbers;
    private final Set<Integer> taken = new HashSet<>();
    private final Map<String, String> carried = new HashMap<>();
    private final Map<Map<String, IntVar>, Deque<String>> standing = new HashMap<>();

    /** So many turns that go to one of these places. */
    private record Going(Option option, Deque<Turn> turns) {

        Span span() {
            return option.places().get(0).span();
        }
    }

    ReadNumbers(BlockModel model, Map<IntVar, Long> numbers) {
        this.model = model;
        this.numbers = numbers;
        model.problem().benches().forEach(bench -> carried.put(bench.cell(), bench.fitted()));
    }

    /** The places of all turns in these times; each of those that are alike is in one of them. */
    List<Placed> in(List<Span> times) {
        List<Going> going = new ArrayList<>();
        for (Group<IntVar> group : model.alike()) {
            Deque<Turn> left = new ArrayDeque<>(group.turns());
            for (Option option : model.options(group.one())) {
                long count = numbers.getOrDefault(option.number(), 0L);
                Span span = option.places().get(0).span();
                if (count > 0 && times.stream().anyMatch(time -> time.holds(span))) {
                    Deque<Turn> turns = new ArrayDeque<>();
                    for (long turn = 0; turn < count; turn++) {
                        turns.add(left.remove());
                    }
                    going.add(new Going(option, turns));
                }
            }
        }
        going.sort(Comparator.comparing((Going one) -> one.span().from()));
        List<Placed> placed = new ArrayList<>();
        for (Going one : going) {
            for (Turn turn : one.turns()) {
                Place place = free(one.option(), turn.work().tool());
                String attendant = place == null ? null : attendant(turn, one.option());
                if (place != null && attendant != null) {
                    taken.addAll(place.slots());
                    carried.put(place.cell(), turn.work().tool());
                    placed.add(new Placed(turn.id(), place.cell(), place.span(), attendant));
                }
            }
        }
        return placed;
    }

    /** Rather a cell that carries the tool. */
    private @Nullable Place free(Option option, String tool) {
        return option.places().stream()
                .filter(place -> place.slots().stream().noneMatch(taken::contains))
                .min(Comparator.comparing((Place place) -> !tool.equals(carried.get(place.cell()))))
                .orElse(null);
    }

    private @Nullable String attendant(Turn turn, Option option) {
        if (turn.partner() != null) {
            return turn.partner();
        }
        return standing.computeIfAbsent(model.standing(option), this::people).poll();
    }

    private Deque<String> people(Map<String, IntVar> could) {
        return could.entrySet().stream()
                .flatMap(one -> LongStream.range(0, numbers.getOrDefault(one.getValue(), 0L))
                        .mapToObj(time -> one.getKey()))
                .collect(Collectors.toCollection(ArrayDeque::new));
    }
}
