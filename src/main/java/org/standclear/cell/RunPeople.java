package org.standclear.cell;

import java.time.Instant;
import java.util.Set;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.PersonId;

/** Who had a part in the run that was going on, or not yet closed out, on a cell at an instant; the run log knows. */
public interface RunPeople {

    /** Operators, e-stop attendants and releasers. */
    Set<PersonId> at(CellId cell, Instant at);
}
