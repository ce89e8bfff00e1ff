package org.standclear.signoff.records;

import java.util.Set;
import org.standclear.platform.database.WordsOutOnly;

/** H2 trigger: a card from paper never changes; what went on may go at the end of its time. */
public final class PaperRemarksOutOnly extends WordsOutOnly {

    /** As the database makes it. */
    public PaperRemarksOutOnly() {
        super("PAPER_REMARKS", "id", Set.of("happened"), Set.of());
    }
}
