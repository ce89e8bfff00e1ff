package org.standclear.cell;

import java.time.Instant;
import java.util.Optional;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.PersonId;

/** Who reads a tool's offset at a cell; a room above answers, which knows people, their authorisations and the duty plan. */
public interface ToolReaders {

    /** Why the person reads no tool of that cell; empty when they may. */
    Optional<String> refusal(CellId cell, PersonId reader, Instant at);

    /** Whether the person was lab staff on duty and authorised on the cell; one of the readers of a change has to be. */
    boolean isStaffOnDuty(CellId cell, PersonId reader, Instant at);
}
