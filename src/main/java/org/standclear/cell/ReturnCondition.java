package org.standclear.cell;

import java.util.Optional;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.PersonId;

/** What a room above asks before a stopped cell is put back into service; asked under the cell's lock. */
public interface ReturnCondition {

    /** Why this person may not put the cell back now, and who can mend it; empty when nothing stands in the way. */
    Optional<String> refusal(CellId cell, PersonId by);
}
