package org.standclear.incident.records;

import java.util.Set;
import org.standclear.platform.database.WordsOutOnly;

/** H2 trigger: an approved restart never changes; why it was approved may go at the end of its time. */
public final class RestartWordsOutOnly extends WordsOutOnly {

    /** As the database makes it. */
    public RestartWordsOutOnly() {
        super("RESTARTS", "incident_id", Set.of("words"), Set.of());
    }
}
