package org.standclear.check;

import org.standclear.core.limits.CourseLimits;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** Reads from a stored answer under which limits it was found, and whether another has the same motion. */
final class LimitsInForce {

    private static final JsonMapper JSON = JsonMapper.builder().build();

    private LimitsInForce() {}

    /** The smaller of the cell's and the course's, which asked again give the same limits in force. */
    static CourseLimits of(StoredAnswer answer) {
        JsonNode limits = JSON.readTree(answer.json()).path("limits");
        return new CourseLimits(
                limits.path("override-percent").path("value").asDouble(),
                limits.path("tool-speed-mm-s").path("value").asDouble());
    }

    /** Whether the steps of both move alike, to the last digit. */
    static boolean sameMotion(StoredAnswer answer, String json) {
        return JSON.readTree(answer.json())
                .path("motion")
                .equals(JSON.readTree(json).path("motion"));
    }
}
