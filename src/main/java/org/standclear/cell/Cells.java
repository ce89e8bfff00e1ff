package org.standclear.cell;

import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.standclear.platform.ids.CellId;

/** Finds cells and their versions, and says what stands in the way of a release. */
public interface Cells {

    /** All cells of the lab that the pages serve, by name. */
    List<Cell> all();

    /** The cell of that id. */
    Optional<Cell> find(CellId id);

    /** The version in force. */
    CellVersion current(CellId id);

    /** The tool that each cell's version in force has fitted, of the lab that the pages serve. */
    Map<CellId, String> fittedTools();

    /** Any version that is or was in force. */
    Optional<CellVersion> version(CellId id, int number);

    /** All versions that are or were in force, latest first. */
    List<CellVersion> versions(CellId id);

    /**
     * Locks the cell's row until the transaction ends, so that a tag, a new version or a day test cannot come between a
     * gate and the act that it gates.
     */
    Cell lock(CellId id);

    /** What stands in the way of a release on this cell at that instant, in words; empty when nothing does. */
    List<Obstacle> obstacles(CellId id, Instant at);

    /**
     * One thing that stands in the way.
     *
     * @param code stable, for tests and the trail: {@code cell-not-in-service}, {@code day-test-missing}, ...
     * @param says what is the matter
     * @param mend who can mend it, and how
     */
    record Obstacle(String code, String says, String mend) {}
}
