package org.standclear.cell;

import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.standclear.platform.ids.CellId;

/** Readings of tool and offset; nobody is shown what another has read. */
public interface ToolReadings {

    /**
     * Keeps a reading; a person's later one takes the place of the earlier.
     *
     * @return why it was not kept: not everybody reads a tool; empty when it was
     */
    Optional<String> read(ToolReading reading);

    /** Keeps a reading that was made for a tool change. */
    void readFor(UUID change, ToolReading reading);

    /** The latest reading of each person that was made for the tool change, and no other. */
    List<ToolReading> of(UUID change);

    /**
     * The latest reading of each person who may read there, of those kept since the last tag was hung that a return to
     * service takes off.
     */
    List<ToolReading> sinceTagged(CellId cell);
}
