package org.standclear.run.web;

import java.util.Map;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import org.standclear.check.StoredAnswer;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** What the check found in the program file, where its answer says so. */
final class FoundFacts {

    private static final JsonMapper JSON = JsonMapper.builder().build();

    private final Map<String, String> found = new TreeMap<>();

    FoundFacts(StoredAnswer answer) {
        JsonNode program = JSON.readTree(answer.json()).path("found");
        program.properties().forEach(entry -> {
            String text = entry.getValue().asString("");
            if (!text.isEmpty()) {
                found.put(entry.getKey(), text);
            }
        });
    }

    @Nullable
    String of(String name) {
        return found.get(name);
    }
}
