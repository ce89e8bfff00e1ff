package org.standclear.incident.records;

import java.util.stream.Collectors;
import org.standclear.incident.Incident;
import org.standclear.incident.RecordableOutcome;

/** The full form of somebody who had a part in it, as a statement: nothing that they wrote or chose is lost. */
final class OwnWords {

    private OwnWords() {}

    static String of(Incident.Form form) {
        StringBuilder words = new StringBuilder(form.story());
        if (!form.doneAtOnce().isEmpty()) {
            words.append("\n\nDone at once: ").append(form.doneAtOnce());
        }
        words.append("\n\nAs they see it, it was: ").append(form.actual().words());
        words.append("; it could have been: ")
                .append(form.foreseeable().words())
                .append('.');
        if (!form.outcomes().isEmpty()) {
            words.append(" They chose: ")
                    .append(form.outcomes().stream()
                            .sorted()
                            .map(RecordableOutcome::words)
                            .collect(Collectors.joining(", ")))
                    .append('.');
        }
        return words.toString();
    }
}
