package org.standclear.booking.allocation.solver;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.standclear.core.allocation.Attendant;
import org.standclear.core.allocation.Bench;
import org.standclear.core.allocation.FreeSlot;
import org.standclear.core.allocation.Place;
import org.standclear.core.allocation.Places;
import org.standclear.core.allocation.Problem;
import org.standclear.core.allocation.Span;
import org.standclear.core.allocation.Turn;

/**
 * Slots of a cell that follow each other without a gap and are all the same to everybody: the same turns of one slot could
 * be on each, at the same cost, and the same people could attend. How many turns of a kind are in a block says nearly all
 * of a plan, in far fewer numbers.
 */
final class Blocks {

    private final List<List<Integer>> slots = new ArrayList<>();
    private final List<String> cells = new ArrayList<>();
    private final int[] blockOf;

    /** A turn of one slot that could be there. */
    private record Could(Turn kind, int passed, boolean stands) {}

    /** Who could attend one there. */
    private record Pool(int minutes, boolean helper, Set<String> people) {}

    Blocks(Problem problem, Places places) {
        this(problem, places, List.of());
    }

    /** In some times every slot is a block by itself, so that there the order in a block is not let go of. */
    Blocks(Problem problem, Places places, List<Span> single) {
        this(problem, places, single, false);
    }

    private Blocks(Problem problem, Places places, List<Span> single, boolean together) {
        blockOf = new int[problem.slots().size()];
        List<Set<Object>> alike = alike(problem, places, false);
        for (Bench bench : problem.benches()) {
            FreeSlot before = null;
            int last = -1;
            for (int slot : inOrder(problem, bench)) {
                FreeSlot now = problem.slots().get(slot);
                boolean goesOn = before != null
                        && single.stream().noneMatch(now.span()::overlaps)
                        && before.span().until().equals(now.span().from())
                        && alike.get(slot).equals(alike.get(last));
                if (!goesOn) {
                    slots.add(new ArrayList<>());
                    cells.add(bench.cell());
                }
                blockOf[slot] = slots.size() - 1;
                slots.get(slots.size() - 1).add(slot);
                before = now;
                last = slot;
            }
        }
        if (together) {
            together(problem, alike(problem, places, true));
        }
    }

    /**
     * The same, and cells that are all the same to everybody from one gap until the next have their blocks together: whoever
     * is in one could be in any of them.
     */
    static Blocks ofCellsTogether(Problem problem, Places places, List<Span> single) {
        return new Blocks(problem, places, single, true);
    }

    /** A stretch of a cell's slots without a gap, as everybody sees it. */
    private record Stretch(List<Span> spans, List<Set<Object>> alike) {}

    private void together(Problem problem, List<Set<Object>> alike) {
        Map<Stretch, List<Integer>> first = new HashMap<>();
        List<List<Integer>> kept = new ArrayList<>();
        for (List<Integer> blocks : stretches(problem)) {
            List<Integer> all =
                    blocks.stream().flatMap(one -> slots.get(one).stream()).toList();
            Stretch stretch = new Stretch(
                    all.stream().map(slot -> problem.slots().get(slot).span()).toList(),
                    all.stream().map(alike::get).toList());
            List<Integer> same = first.get(stretch);
            if (same == null) {
                List<Integer> numbers = new ArrayList<>();
                for (int block : blocks) {
                    numbers.add(kept.size());
                    kept.add(slots.get(block));
                }
                first.put(stretch, numbers);
            } else {
                for (int block = 0; block < blocks.size(); block++) {
                    kept.get(same.get(block)).addAll(slots.get(blocks.get(block)));
                }
            }
        }
        slots.clear();
        cells.clear();
        for (List<Integer> block : kept) {
            block.forEach(slot -> blockOf[slot] = slots.size());
            cells.add(problem.slots().get(block.get(0)).cell());
            slots.add(block);
        }
    }

    /** The blocks of each stretch. */
    private List<List<Integer>> stretches(Problem problem) {
        List<List<Integer>> stretches = new ArrayList<>();
        for (int block = 0; block < slots.size(); block++) {
            if (block == 0 || !goesOn(problem, block - 1)) {
                stretches.add(new ArrayList<>());
            }
            stretches.get(stretches.size() - 1).add(block);
        }
        return stretches;
    }

    private boolean goesOn(Problem problem, int block) {
        List<Integer> now = slots.get(block);
        FreeSlot last = problem.slots().get(now.get(now.size() - 1));
        FreeSlot next = problem.slots().get(slots.get(block + 1).get(0));
        return last.cell().equals(next.cell())
                && last.span().until().equals(next.span().from());
    }

    private static List<Integer> inOrder(Problem problem, Bench bench) {
        return IntStream.range(0, problem.slots().size())
                .filter(slot -> problem.slots().get(slot).cell().equals(bench.cell()))
                .boxed()
                .sorted(Comparator.comparing(
                        slot -> problem.slots().get(slot).span().from()))
                .toList();
    }

    /** For each slot all that tells it from others. */
    private static List<Set<Object>> alike(Problem problem, Places places, boolean longToo) {
        List<Set<Object>> alike = new ArrayList<>();
        problem.slots().forEach(slot -> alike.add(new HashSet<>()));
        Map<List<Object>, Pool> pools = new HashMap<>();
        for (Turn kind :
                new LinkedHashSet<>(problem.turns().stream().map(Turn::kind).toList())) {
            for (Place place : places.of(kind)) {
                if (place.slots().size() == 1 || longToo) {
                    Set<Object> there = alike.get(place.slots().get(0));
                    int passed = kind.times().wishesPassed(place.cell(), place.span());
                    there.add(new Could(kind, passed, stands(kind, place)));
                    if (kind.partner() == null) {
                        // the same for every kind that needs an attendant there
                        List<Object> stop =
                                List.of(place.cell(), place.span(), kind.work().helper());
                        there.add(pools.computeIfAbsent(stop, key -> pool(kind, place, places)));
                    }
                }
            }
        }
        return alike;
    }

    private static Pool pool(Turn kind, Place place, Places places) {
        boolean helper = kind.work().helper();
        return new Pool(
                kind.work().minutes(),
                helper,
                places.pool(place.cell(), place.span(), helper).stream()
                        .map(Attendant::person)
                        .collect(Collectors.toSet()));
    }

    private static boolean stands(Turn kind, Place place) {
        return kind.standing() != null
                && kind.standing().cell().equals(place.cell())
                && kind.standing().span().equals(place.span());
    }

    int count() {
        return slots.size();
    }

    /** The block of a slot. */
    int of(int slot) {
        return blockOf[slot];
    }

    /** The slots of a block in order of time, those of one cell after those of the other where cells are together. */
    List<Integer> slots(int block) {
        return slots.get(block);
    }

    /** The blocks of a cell in order of time. */
    List<Integer> of(String cell) {
        return IntStream.range(0, slots.size())
                .filter(block -> cells.get(block).equals(cell))
                .boxed()
                .toList();
    }

    /** The blocks that a place's slots lie in, one for each slot. */
    List<Integer> of(Place place) {
        return place.slots().stream().map(slot -> blockOf[slot]).toList();
    }
}
