package org.standclear.cell;

import java.time.Instant;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.PersonId;

/**
 * One immutable version of a cell's description.
 *
 * @param number the version the file itself names
 * @param file the cell file as it was proposed, byte for byte (UTF-8)
 * @param sha256 of the file
 * @param fittedTool the code of the tool fitted in this version
 */
public record CellVersion(
        CellId cell,
        int number,
        String file,
        String sha256,
        String fittedTool,
        PersonId proposedBy,
        PersonId approvedBy,
        Instant inForceSince,
        String reason) {}
