package org.standclear.desk.web;

import java.util.List;
import org.springframework.stereotype.Component;
import org.standclear.cell.Cell;
import org.standclear.cell.VersionEffects;
import org.standclear.cell.VersionEffects.Effect;

/** What new cell versions did to upcoming bookings, cell by cell, as the technician's desk shows it. */
@Component
class RecheckLists {

    private final VersionEffects effects;

    RecheckLists(VersionEffects effects) {
        this.effects = effects;
    }

    /** A cell with bookings that were checked anew. */
    record CellRechecks(String name, String says, List<Effect> effects) {}

    /** Only cells that have any. */
    List<CellRechecks> of(List<Cell> cells) {
        return cells.stream()
                .map(cell -> rechecks(cell, effects.of(cell.id())))
                .filter(one -> !one.effects().isEmpty())
                .toList();
    }

    private static CellRechecks rechecks(Cell cell, List<Effect> all) {
        long changed = all.stream().filter(Effect::changed).count();
        long waiting =
                all.stream().filter(effect -> effect.answerHref().isEmpty()).count();
        String says = count(all.size(), "upcoming booking") + " for version " + cell.currentVersion() + ": "
                + (changed == 0 ? "none has" : changed == 1 ? "1 has" : changed + " have")
                + " another answer than before"
                + (waiting == 0 ? "." : ", " + count(waiting, "re-check") + " still to come.");
        return new CellRechecks(cell.name(), says, all);
    }

    private static String count(long number, String thing) {
        return number + " " + thing + (number == 1 ? "" : "s");
    }
}
