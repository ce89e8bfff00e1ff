package org.standclear.run.web;

import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.standclear.check.AnswerDetails;

/** What the check found in the program file, by the item's words on the answer's page. */
final class FoundFacts {

    private final Map<String, String> found = new HashMap<>();

    FoundFacts(Optional<AnswerDetails> details) {
        details.ifPresent(answer -> answer.columns().forEach(column -> keep(column.item(), column.found())));
    }

    private void keep(String item, @Nullable String words) {
        if (words != null) {
            found.put(item, words);
        }
    }

    @Nullable
    String of(String item) {
        return found.get(item);
    }
}
