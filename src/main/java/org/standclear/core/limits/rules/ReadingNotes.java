package org.standclear.core.limits.rules;

import java.util.stream.Stream;
import org.standclear.core.limits.Check;
import org.standclear.core.limits.CheckedProgram;
import org.standclear.core.limits.Details;
import org.standclear.core.limits.Finding;
import org.standclear.core.limits.LimitRule;

/** Tells how the reader took what could be taken in more than one way. */
final class ReadingNotes implements LimitRule {

    @Override
    public Stream<Finding> findings(CheckedProgram program) {
        return program.plan().notes().stream()
                .map(note -> new Finding.Notice(
                        Details.of(Check.READING, note.says()).onLine(note.line())));
    }
}
