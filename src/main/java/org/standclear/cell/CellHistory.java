package org.standclear.cell;

import java.util.List;
import org.standclear.platform.ids.CellId;

/**
 * What happened at a cell after something else, by the numbers under which it was kept: a clock can be set back between
 * two, and what is older by its time may then be the newer. Asked under the cell's row lock, under which all of it is kept.
 */
public interface CellHistory {

    /** The last of each that was kept so far. */
    Kept last(CellId cell);

    /** Whether a hold, a tag that stops the cell or a day test was kept since. */
    boolean stoppedOrTestedSince(CellId cell, Kept before);

    /** Whether a day test was kept since. */
    boolean testedSince(CellId cell, Kept before);

    /** The number of the last hold or tag that came off the cell; 0 when none ever did. */
    long lastReturned(CellId cell);

    /** Stops that were kept since, first to last. */
    List<CellStop> stopsSince(CellId cell, Kept before);

    /** Numbers of the last tag, day test and stop; 0 where there was none. */
    record Kept(long tag, long test, long stop) {}
}
