package org.standclear.retention.web;

import java.time.DateTimeException;
import java.time.Instant;
import org.jspecify.annotations.Nullable;
import org.standclear.platform.ids.Id;
import org.standclear.platform.retention.Stretch.Position;

/** Where a page of records begins, as its address says it. */
final class Positions {

    private Positions() {}

    static String write(Position position) {
        return position.clockStart() + "_" + position.id();
    }

    /** From the beginning when the address says nothing that can be read. */
    static @Nullable Position read(@Nullable String written) {
        String[] parts = written == null ? new String[0] : written.split("_", 2);
        try {
            return parts.length < 2 ? null : new Position(Instant.parse(parts[0]), Id.parse(parts[1]));
        } catch (DateTimeException | IllegalArgumentException noPosition) {
            return null;
        }
    }
}
