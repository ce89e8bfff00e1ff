package org.standclear.cell;

import java.time.Instant;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.PersonId;

/**
 * A stop on a cell, whether or not a run was going on.
 *
 * @param id of the event in the run log
 * @param armStoppedItself a protective stop; otherwise somebody pressed the e-stop
 * @param reset null while its cause is not on record
 */
public record CellStop(
        UUID id,
        CellId cell,
        boolean armStoppedItself,
        PersonId loggedBy,
        Instant at,
        @Nullable Reset reset) {

    /**
     * Who recorded the cause.
     *
     * @param precaution whether nothing had been wrong
     */
    public record Reset(PersonId by, Instant at, String cause, boolean precaution) {}
}
