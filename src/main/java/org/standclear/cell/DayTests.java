package org.standclear.cell;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.PersonId;

/** Day tests gate all releases of a cell on the day. */
public interface DayTests {

    /**
     * Compares the readings with the version in force and keeps the test. One that does not pass hangs an
     * out-of-service tag on the cell in the same transaction.
     */
    DayTest record(CellId cell, PersonId by, DayTestReadings readings);

    /**
     * The same for a test on the e-stop that was pressed last time.
     *
     * @param whySameStation empty when another e-stop was pressed
     */
    DayTest record(CellId cell, PersonId by, DayTestReadings readings, String whySameStation);

    /** The last test of an earlier day, if the same e-stop was pressed in it: the stations take turns. */
    Optional<DayTest> lastOn(CellId cell, String station);

    /** The day's last test, if it passed. */
    Optional<DayTest> passedOn(CellId cell, LocalDate date);

    /** The latest test that was made at or before the instant. */
    Optional<DayTest> latest(CellId cell, Instant at);

    /** The latest tests, latest first. */
    List<DayTest> recent(CellId cell, int atMost);
}
