package org.standclear.cell;

import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.PersonId;

/** Changes of a cell's state. Anyone may stop a cell; only staff put it back. */
public interface CellStates {

    /** Hangs an out-of-service tag on the cell, or adds to the reasons of one that hangs there. */
    void tagOut(CellId cell, PersonId by, String reason);

    /** Puts a hold on the cell, for example after a second protective stop. */
    void hold(CellId cell, PersonId by, String reason);

    /** Puts a cell back into service; the caller has checked that the person may. */
    void returnToService(CellId cell, PersonId by, String reason);
}
