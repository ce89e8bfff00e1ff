package org.standclear.incident.records;

import java.util.Set;
import org.standclear.platform.database.WordsOutOnly;

/** H2 trigger: a noted review never changes; the words of its outcome may go at the end of their time. */
public final class OutcomesOutOnly extends WordsOutOnly {

    /** As the database makes it. */
    public OutcomesOutOnly() {
        super("RISK_REVIEWS", "incident_id", Set.of("outcome"), Set.of());
    }
}
