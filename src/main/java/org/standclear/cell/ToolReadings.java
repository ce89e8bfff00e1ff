package org.standclear.cell;

import java.time.Instant;
import java.util.List;
import org.standclear.platform.ids.CellId;

/** Readings of tool and offset; nobody is shown what another has read. */
public interface ToolReadings {

    /** Keeps a reading; a person's later one takes the place of the earlier. */
    void read(ToolReading reading);

    /** The latest reading of each person from the instant on. */
    List<ToolReading> since(CellId cell, Instant from);
}
