package org.standclear.check;

import java.time.Instant;
import java.util.Locale;
import org.standclear.platform.ids.AnswerId;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.RevisionId;

/**
 * What the check answered for one revision on one cell version under one course's limits.
 *
 * @param json the whole answer, {@code answer-format: 1}
 */
public record StoredAnswer(
        AnswerId id,
        RevisionId revision,
        CellId cell,
        int cellVersion,
        Verdict verdict,
        String ruleSet,
        String json,
        BenchFacts bench,
        Instant at) {

    /** The answer in one word. */
    public enum Verdict {
        WITHIN("within limits"),
        OUTSIDE("outside limits"),
        NOT_CHECKABLE("not checkable");

        private final String words;

        Verdict(String words) {
            this.words = words;
        }

        /** As people say it. */
        public String words() {
            return words;
        }

        /** As the shape beside the words knows it. */
        public String mark() {
            return name().toLowerCase(Locale.ROOT).replace('_', '-');
        }
    }
}
