package org.standclear.check;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.standclear.core.quantity.ShownNumber;

/** How pages call checks, outcomes and parts. */
public final class CheckWords {

    /** Worst first. */
    private static final List<String> OUTCOMES = List.of("outside", "not-checkable", "caution", "notice", "within");

    private static final Map<String, String> OUTCOME_WORDS = Map.of(
            "outside", "outside limits",
            "not-checkable", "not checkable",
            "caution", "caution",
            "notice", "notice",
            "within", "within limits");

    private static final Map<String, String> CHECKS = Map.ofEntries(
            Map.entry("power-mode", "Power mode"),
            Map.entry("override", "Override"),
            Map.entry("declared-matches-found", "Declared and found"),
            Map.entry("tool-speed", "Tool speed"),
            Map.entry("moving-part-speed", "Fastest part"),
            Map.entry("axis-range", "Axis range"),
            Map.entry("reach", "Reach"),
            Map.entry("axis-speed", "Axis speed"),
            Map.entry("space", "Space"),
            Map.entry("keep-out", "Keep-out"),
            Map.entry("payload", "Payload"),
            Map.entry("tool-fitted", "Fitted tool"),
            Map.entry("contact", "Contact"),
            Map.entry("separation", "Separation"),
            Map.entry("coverage", "Lines understood"),
            Map.entry("start", "Start"),
            Map.entry("loop", "Loop"));

    private static final double WHOLE = 100;
    private static final String AT_OVERRIDE = ", at the declared override";
    private static final String FASTER = "; faster if that is not set either.";

    private CheckWords() {}

    /** Where an outcome stands, worst first. */
    public static int rank(String outcome) {
        int rank = OUTCOMES.indexOf(outcome);
        return rank < 0 ? OUTCOMES.size() : rank;
    }

    /** An outcome as people say it. */
    public static String outcome(String outcome) {
        return OUTCOME_WORDS.getOrDefault(outcome, outcome);
    }

    /** Ends a sentence about full power, which was computed at an override that nobody may have set. */
    public static String atOverride(@Nullable Double percent) {
        return percent != null && percent < WHOLE
                ? AT_OVERRIDE + " of " + ShownNumber.plain(percent) + " %" + FASTER
                : ".";
    }

    /** The same for the bench, where the override is read by two people and told to nobody. */
    public static String atUntoldOverride(@Nullable Double percent) {
        return percent != null && percent < WHOLE ? AT_OVERRIDE + FASTER : ".";
    }

    /** A check as people say it. */
    public static String check(String check) {
        return CHECKS.getOrDefault(check, sentenceCase(check.replace('-', ' ')));
    }

    /** Several checks in one line. */
    public static String checks(List<String> checks) {
        return checks.stream().map(CheckWords::check).collect(Collectors.joining(", "));
    }

    private static String sentenceCase(String text) {
        return text.isEmpty() ? text : text.substring(0, 1).toUpperCase(Locale.ROOT) + text.substring(1);
    }
}
