package org.standclear.report.records;

import java.util.Set;
import org.standclear.platform.database.WordsOutOnly;

/** H2 trigger: a line of a week that was signed never changes; the remark beside it may go at the end of its time. */
public final class RemarksOutOnly extends WordsOutOnly {

    /** As the database makes it. */
    public RemarksOutOnly() {
        super("EXCEPTION_REMARKS", "id", Set.of("remark"), Set.of());
    }
}
