package org.standclear.signoff.records;

import java.util.Set;
import org.standclear.platform.database.WordsOutOnly;

/** H2 trigger: a waiver is given once and used once; its reason may go at the end of its time. */
public final class WaiverReasonsOutOnly extends WordsOutOnly {

    /** As the database makes it. */
    public WaiverReasonsOutOnly() {
        super("WAIVERS", "id", Set.of("reason"), Set.of("used_at", "release_id"));
    }
}
