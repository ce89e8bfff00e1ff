package org.standclear.cell;

import java.util.List;
import org.standclear.platform.ids.CellId;

/** Stops that wait for their reset: while one does, no release is issued on the cell and no list is signed there. */
public interface CellStops {

    /** Keeps the stop; locks the cell, so that no release slips past it. */
    void log(CellStop stop);

    /** Stops on the cell whose cause is not on record, first to last. */
    List<CellStop> open(CellId cell);

    /** Records one cause for all open stops on the cell; the caller has checked that the person is staff. */
    void reset(CellId cell, CellStop.Reset reset);
}
