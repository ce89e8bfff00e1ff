package org.standclear.cell;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * What a cell file says, one fact a line, in the words of the cell page.
 *
 * @param name the cell's name in the file
 * @param version the version in the file
 * @param power {@code reduced} or {@code full}
 */
public record CellFacts(
        String name,
        int version,
        String fittedTool,
        List<Double> fittedOffsetMm,
        String power,
        double overridePercent,
        List<Fact> facts) {

    public CellFacts {
        fittedOffsetMm = List.copyOf(fittedOffsetMm);
        facts = List.copyOf(facts);
    }

    /** The limits, in the order of the file. */
    public List<Fact> limits() {
        return facts.stream().filter(fact -> fact.group() != Group.MACHINE).toList();
    }

    /** The few limits that people ask for first. */
    public List<Fact> main() {
        return facts.stream().filter(fact -> fact.group() == Group.MAIN_LIMIT).toList();
    }

    /** The arm and the tools, in the order of the file. */
    public List<Fact> armAndTools() {
        return facts.stream().filter(fact -> fact.group() == Group.MACHINE).toList();
    }

    /** What changes when these facts take the place of earlier ones, in the order of the file. */
    public List<Change> since(CellFacts earlier) {
        Map<String, Fact> before = byLabel(earlier.facts);
        Map<String, Fact> after = byLabel(facts);
        List<Change> changes = new ArrayList<>();
        after.forEach((label, now) -> {
            Fact was = before.get(label);
            if (was == null || !was.shown().equals(now.shown())) {
                changes.add(new Change(label, was == null ? null : was.shown(), now.shown()));
            }
        });
        before.forEach((label, was) -> {
            if (!after.containsKey(label)) {
                changes.add(new Change(label, was.shown(), null));
            }
        });
        return List.copyOf(changes);
    }

    private static Map<String, Fact> byLabel(List<Fact> facts) {
        Map<String, Fact> map = new LinkedHashMap<>();
        facts.forEach(fact -> map.put(fact.label(), fact));
        return map;
    }

    /** Where the cell's pages show a fact. */
    public enum Group {
        /** A limit that the list of cells shows too. */
        MAIN_LIMIT,
        LIMIT,
        MACHINE
    }

    /**
     * One fact.
     *
     * @param source what the limit rests on; empty when it is the cell's own
     */
    public record Fact(Group group, String label, String value, String unit, String source) {

        /** Value and unit. */
        public String shown() {
            return unit.isEmpty() ? value : value + " " + unit;
        }
    }

    /** A fact that differs: both null is never made; null means there was, or is, none. */
    public record Change(
            String label, @Nullable String was, @Nullable String now) {

        /** "tool speed 250 mm/s -> 200 mm/s". */
        public String words() {
            return label + " " + (was == null ? "none" : was) + " -> " + (now == null ? "none" : now);
        }
    }
}
