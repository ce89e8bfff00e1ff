package org.standclear.cell;

import java.util.LinkedHashMap;
import java.util.Map;
import org.springframework.context.annotation.Lazy;
import org.springframework.stereotype.Component;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.lab.CellNames;

/** Answers from the cells of the lab. */
@Component
class CellNamesOfCells implements CellNames {

    private final Cells cells;

    CellNamesOfCells(@Lazy Cells cells) {
        this.cells = cells;
    }

    @Override
    public Map<CellId, String> all() {
        Map<CellId, String> names = new LinkedHashMap<>();
        cells.all().forEach(cell -> names.put(cell.id(), cell.name()));
        return names;
    }
}
