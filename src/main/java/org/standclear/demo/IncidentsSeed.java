package org.standclear.demo;

import java.time.LocalTime;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** The incidents of the demo's past, as {@code seed-data/incidents.yaml} tells them. */
record IncidentsSeed(List<IncidentSeed> incidents) {

    /** One incident; what is missing has not happened. */
    record IncidentSeed(
            String key,
            int weeksBack,
            WeekTimes.Day day,
            LocalTime at,
            String cell,
            String kind,
            String sentence,
            String reporter,
            String part,
            @Nullable RunSeed run,
            @Nullable String statement,
            @Nullable FormSeed form,
            @Nullable String reviewer,
            @Nullable String medical,
            @Nullable List<CauseSeed> causes,
            @Nullable List<ActionSeed> actions,
            @Nullable RiskSeed risk,
            @Nullable String restart,
            @Nullable ReturnSeed returned,
            @Nullable ClosedSeed closed) {}

    /** The run during which it happened. */
    record RunSeed(String operator, String attendant, String program, boolean stopped) {}

    /** The full form, and who filled it in. */
    record FormSeed(String by, String story, String atOnce, String actual, String foreseeable) {}

    /** A cause at the root of its branch. */
    record CauseSeed(String branch, String words) {}

    /** An action; not done where nothing is said of it. */
    record ActionSeed(
            String words,
            String level,
            String owner,
            int dueDays,
            @Nullable Integer doneAfterDays,
            @Nullable String done) {}

    /** A review of the cell's risk assessment. */
    record RiskSeed(String outcome, int afterDays) {}

    /** Who put the cell back the day after. */
    record ReturnSeed(String by, String second, String mended) {}

    /** How it was closed. */
    record ClosedSeed(int afterDays, String learned) {}
}
