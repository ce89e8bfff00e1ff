package org.standclear.check;

import java.time.Instant;
import org.standclear.platform.ids.AnswerId;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.RevisionId;

/** An answer without its findings, for lists: the whole of a long program's answer is large. */
public record AnswerBrief(
        AnswerId id,
        RevisionId revision,
        CellId cell,
        int cellVersion,
        StoredAnswer.Verdict verdict,
        String ruleSet,
        Instant at) {

    static AnswerBrief of(StoredAnswer answer) {
        return new AnswerBrief(
                answer.id(),
                answer.revision(),
                answer.cell(),
                answer.cellVersion(),
                answer.verdict(),
                answer.ruleSet(),
                answer.at());
    }
}
