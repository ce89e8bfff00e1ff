package org.standclear.check.web;

import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import tools.jackson.databind.DeserializationFeature;
import tools.jackson.databind.PropertyNamingStrategies;
import tools.jackson.databind.json.JsonMapper;

/** A stored answer, {@code answer-format: 1}, as the pages read it. */
record AnswerDocument(String answer, CellName cell, ProgramName program, Motion motion, List<Finding> findings) {

    private static final JsonMapper JSON = JsonMapper.builder()
            .propertyNamingStrategy(PropertyNamingStrategies.KEBAB_CASE)
            .disable(DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES)
            .build();

    AnswerDocument {
        findings = findings == null ? List.of() : List.copyOf(findings);
    }

    static AnswerDocument read(String json) {
        return JSON.readValue(json, AnswerDocument.class);
    }

    record CellName(String name, int version) {}

    record ProgramName(
            @Nullable String title,
            String sha256,
            String reader,
            @Nullable Integer linesUnderstood,
            @Nullable Integer linesTotal) {}

    record Motion(
            @Nullable Double cycleTimeS,
            @Nullable Double fullPowerCycleTimeS,
            @Nullable Double heldToolPeakMmS,
            @Nullable Double fullPowerToolPeakMmS,
            @Nullable Double heldFastestPartMmS,
            @Nullable String fastestPart,
            @Nullable Integer peakStep,
            @Nullable Double largestRadiusMm,
            @Nullable Double separationMm,
            @Nullable Map<String, Double> stopTravelMm,
            List<Step> steps) {

        Motion {
            steps = steps == null ? List.of() : List.copyOf(steps);
        }
    }

    record Step(
            int step,
            String kind,
            int line,
            @Nullable Boolean closing,
            @Nullable Double durationS,
            @Nullable Double fullPowerToolPeakMmS,
            @Nullable Double heldToolPeakMmS,
            @Nullable Double heldElbowPeakMmS,
            @Nullable Double heldFastestPartMmS) {}

    record Finding(
            String check,
            String outcome,
            @Nullable Boolean blocks,
            @Nullable Double observed,
            @Nullable Double limit,
            @Nullable String unit,
            @Nullable Integer step,
            @Nullable Integer line,
            @Nullable String says) {}
}
