package org.standclear.cell;

import org.springframework.stereotype.Component;
import org.standclear.core.cell.CellDescription;
import org.standclear.core.cell.CellFileReader;
import org.standclear.core.text.BadInput;
import org.standclear.core.text.Reading;

/** Reads cell files by the core's reader. */
@Component
class CoreCellFiles implements CellFiles {

    private static final int NAME_LENGTH = 60;

    @Override
    public CellReading read(String file) {
        Reading<CellDescription> reading = CellFileReader.read(file);
        if (reading instanceof Reading.Read<CellDescription> read) {
            return fitting(read.value());
        }
        return new CellReading.Unreadable(
                reading.badInput().map(BadInput::sentence).orElse("The file cannot be read."));
    }

    private static CellReading fitting(CellDescription cell) {
        if (cell.name().length() > NAME_LENGTH || cell.fittedTool().code().length() > NAME_LENGTH) {
            return new CellReading.Unreadable("Names of cells and tools have 60 characters at most.");
        }
        return new CellReading.Readable(CellWords.of(cell));
    }
}
