package org.standclear.architecture.planted;

import java.io.File;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;

/** A computation that reads a file and the machine's clock. */
public final class ImpureSum {

    /** Depends on the disk and on when it is asked. */
    public long sum() {
        return new File("readings").length()
                + Instant.now().toEpochMilli()
                + LocalDate.now(ZoneOffset.UTC).toEpochDay();
    }
}
