package org.standclear.cell;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.PersonId;

/**
 * One day test as it was recorded.
 *
 * @param cellVersion the version in force when it was made
 * @param failures what did not pass, one sentence each; empty when it passed
 */
public record DayTest(
        UUID id,
        CellId cell,
        int cellVersion,
        LocalDate date,
        PersonId testedBy,
        Instant testedAt,
        List<String> failures,
        DayTestReadings readings) {

    public DayTest {
        failures = List.copyOf(failures);
    }

    /** Whether every item passed. */
    public boolean passed() {
        return failures.isEmpty();
    }
}
