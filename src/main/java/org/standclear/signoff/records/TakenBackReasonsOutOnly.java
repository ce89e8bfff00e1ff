package org.standclear.signoff.records;

import java.util.Set;
import org.standclear.platform.database.WordsOutOnly;

/** H2 trigger: that a waiver was taken back never changes; why may go at the end of its time. */
public final class TakenBackReasonsOutOnly extends WordsOutOnly {

    /** As the database makes it. */
    public TakenBackReasonsOutOnly() {
        super("WAIVERS", "waiver_id", Set.of("reason"), Set.of());
    }
}
