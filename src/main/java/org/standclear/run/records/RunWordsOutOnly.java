package org.standclear.run.records;

import java.util.Set;
import org.standclear.platform.database.WordsOutOnly;

/** H2 trigger: an event of the log never changes; its words may go at the end of their time. */
public final class RunWordsOutOnly extends WordsOutOnly {

    /** As the database makes it. */
    public RunWordsOutOnly() {
        super("RUN_WORDS", "id", Set.of("words"), Set.of());
    }
}
