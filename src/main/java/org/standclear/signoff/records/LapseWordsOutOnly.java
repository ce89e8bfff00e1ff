package org.standclear.signoff.records;

import java.util.Set;
import org.standclear.platform.database.WordsOutOnly;

/** H2 trigger: that something lapsed never changes; why may go at the end of its time. */
public final class LapseWordsOutOnly extends WordsOutOnly {

    /** As the database makes it. */
    public LapseWordsOutOnly() {
        super("LAPSES", "id", Set.of("because"), Set.of());
    }
}
