package org.standclear.booking.web;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.springframework.stereotype.Component;
import org.standclear.booking.CellFit;
import org.standclear.cell.Cell;
import org.standclear.cell.Cells;
import org.standclear.cell.Equipment;
import org.standclear.people.AssignmentNeeds.Needs;

/** What an assignment can ask of a cell: tools of the register or of cells, and features that cells have. */
@Component
class AssignmentChoices {

    private final Cells cells;
    private final CellFit fit;
    private final Equipment equipment;

    AssignmentChoices(Cells cells, CellFit fit, Equipment equipment) {
        this.cells = cells;
        this.fit = fit;
        this.equipment = equipment;
    }

    /** By code; the first is for none. */
    Map<String, String> tools() {
        Map<String, String> tools = new TreeMap<>();
        fit.offered().tools().values().forEach(tool -> tools.put(tool, tool));
        equipment.all().stream()
                .filter(item -> item.kind() == Equipment.Kind.TOOL && item.approved())
                .forEach(item -> tools.put(item.code(), item.code() + ", " + item.name()));
        Map<String, String> choices = new LinkedHashMap<>();
        choices.put("", "any tool");
        choices.putAll(tools);
        return choices;
    }

    /** What cells have, and what the assignment asks for already. */
    Map<String, String> features(Needs now) {
        Set<String> words = new TreeSet<>(now.features());
        fit.offered().features().values().forEach(words::addAll);
        Map<String, String> choices = new LinkedHashMap<>();
        words.forEach(one -> choices.put(one, one));
        return choices;
    }

    /** Which cells have it now, in a sentence. */
    String fitting(Needs needs) {
        CellFit.Offered offered = fit.offered();
        String names = cells.all().stream()
                .filter(cell -> offered.fits(cell.id(), needs))
                .map(Cell::name)
                .collect(Collectors.joining(", "));
        if (needs.equals(Needs.NONE)) {
            return "Every cell will do.";
        }
        return names.isEmpty()
                ? "No cell has this now, so nobody can book for the assignment."
                : "These cells have it now: " + names + ".";
    }
}
