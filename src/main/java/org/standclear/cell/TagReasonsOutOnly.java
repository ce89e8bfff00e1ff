package org.standclear.cell;

import java.util.Set;
import org.standclear.platform.database.WordsOutOnly;

/** H2 trigger: a tag is hung once and lifted once; its reasons may go at the end of their time. */
public final class TagReasonsOutOnly extends WordsOutOnly {

    /** As the database makes it. */
    public TagReasonsOutOnly() {
        super("TAG_REASONS", "id", Set.of("reason", "lift_reason"), Set.of("lifted_by", "lifted_at", "lift_reason"));
    }
}
