package org.standclear.check.web;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.standclear.check.AnswerBrief;
import org.standclear.check.AnswerDetails;
import org.standclear.check.CheckWords;
import org.standclear.check.StoredAnswer;
import org.standclear.check.web.AnswerView.ColumnView;
import org.standclear.check.web.AnswerView.FactView;
import org.standclear.check.web.AnswerView.FindingView;
import org.standclear.check.web.AnswerView.GaugeView;
import org.standclear.check.web.AnswerView.StepView;
import org.standclear.core.quantity.ShownNumber;

/** Puts a stored answer into words; numbers are rounded towards the unsafe side. */
final class AnswerViews {

    private AnswerViews() {}

    static AnswerView of(AnswerBrief answer, AnswerDetails details, String title, String source) {
        AnswerDocument document = AnswerDocument.read(details.json());
        return new AnswerView(
                document.answer(),
                headline(document, title),
                "Checked against " + document.cell().name() + " version "
                        + document.cell().version() + ", rules " + answer.ruleSet() + ".",
                fullPower(document, details),
                findings(document, details),
                motion(document.motion()),
                details.columns().stream().map(AnswerViews::column).toList(),
                steps(document.motion()),
                details.stepsLeftOut(),
                SourceExcerpt.of(source, document.findings()));
    }

    private static String headline(AnswerDocument document, String title) {
        long blocking = document.findings().stream()
                .filter(finding -> Objects.equals(finding.blocks(), true))
                .count();
        String named = "\u201c" + title + "\u201d ";
        String cell = document.cell().name();
        return switch (document.answer()) {
            case "within" -> named + "is within " + cell + "'s limits";
            case "outside" -> named + "is outside " + cell + "'s limits: " + things(blocking, "to mend");
            default -> named + "cannot be checked on " + cell + ": " + things(blocking, "missing");
        };
    }

    private static String things(long count, String what) {
        return (count == 1 ? "one thing " : count + " things ") + what;
    }

    private static @Nullable String fullPower(AnswerDocument document, AnswerDetails details) {
        AnswerDocument.Motion motion = document.motion();
        Double full = motion.fullPowerToolPeakMmS();
        Double held = motion.heldToolPeakMmS();
        if (full == null || held != null && up(full, "mm/s").equals(up(held, "mm/s"))) {
            return null;
        }
        return "In full power this program would reach " + up(full, "mm/s")
                + (held == null ? "" : ", not " + up(held, "mm/s"))
                + CheckWords.atOverride(override(document, details))
                + " That is what happens if the power step is skipped at the bench.";
    }

    /** The declared override when it is what was computed with; null when none is declared or the file sets another. */
    private static @Nullable Double override(AnswerDocument document, AnswerDetails details) {
        boolean counts = details.columns().stream()
                .anyMatch(column -> column.item().equals("Override") && column.declared() != null && column.agrees());
        return !counts
                ? null
                : document.findings().stream()
                        .filter(finding -> finding.check().equals("override"))
                        .map(AnswerDocument.Finding::observed)
                        .filter(Objects::nonNull)
                        .findFirst()
                        .orElse(null);
    }

    private static List<FindingView> findings(AnswerDocument document, AnswerDetails details) {
        Map<String, String> bounds = details.bounds().stream()
                .collect(Collectors.toMap(AnswerDetails.Bound::check, AnswerDetails.Bound::says, (a, b) -> a));
        return document.findings().stream()
                .sorted(Comparator.comparingInt(finding -> CheckWords.rank(finding.outcome())))
                .map(finding -> finding(finding, bounds.get(finding.check())))
                .toList();
    }

    private static FindingView finding(AnswerDocument.Finding finding, @Nullable String bound) {
        return new FindingView(
                finding.outcome(),
                CheckWords.outcome(finding.outcome()),
                CheckWords.check(finding.check()),
                finding.says() == null ? "" : finding.says(),
                value(finding),
                gauge(finding),
                bound,
                where(finding),
                finding.line());
    }

    private static @Nullable String value(AnswerDocument.Finding finding) {
        if (finding.observed() == null) {
            return null;
        }
        String unit = finding.unit() == null ? "" : finding.unit();
        String observed = up(finding.observed(), unit);
        if (finding.limit() == null) {
            return observed;
        }
        String limit = (limit(finding.limit()) + " " + unit).strip();
        return finding.check().equals("keep-out")
                ? observed + " to the keep-out, " + limit + " needed"
                : observed + " of " + limit;
    }

    /** A limit as it was written; one that was computed is long and is rounded down. */
    private static String limit(double value) {
        String written = ShownNumber.plain(value);
        return written.length() <= 8 ? written : ShownNumber.down(value, 1);
    }

    private static @Nullable GaugeView gauge(AnswerDocument.Finding finding) {
        Double observed = finding.observed();
        Double limit = finding.limit();
        if (observed == null || limit == null || !(observed >= 0) || !(limit > 0)) {
            return null;
        }
        if (finding.check().equals("keep-out")) {
            return null;
        }
        double whole = Math.max(observed, limit) * 1.15;
        boolean over = finding.outcome().equals("outside") || finding.outcome().equals("caution");
        return new GaugeView(percent(observed, whole), percent(limit, whole), over);
    }

    private static double percent(double part, double whole) {
        return Math.round(part / whole * 1000) / 10.0;
    }

    private static @Nullable String where(AnswerDocument.Finding finding) {
        List<String> parts = new ArrayList<>();
        if (finding.step() != null) {
            parts.add("step " + finding.step());
        }
        if (finding.line() != null) {
            parts.add("line " + finding.line());
        }
        return parts.isEmpty() ? null : String.join(", ", parts);
    }

    private static List<FactView> motion(AnswerDocument.Motion motion) {
        List<FactView> facts = new ArrayList<>();
        facts.add(new FactView("Tool point, held", up(motion.heldToolPeakMmS(), "mm/s")));
        facts.add(new FactView("Tool point, full power", up(motion.fullPowerToolPeakMmS(), "mm/s")));
        String part = motion.fastestPart() == null
                ? ""
                : " (" + motion.fastestPart().replace("tool", "tool point").replace('-', ' ')
                        + (motion.peakStep() == null ? "" : ", step " + motion.peakStep()) + ")";
        facts.add(new FactView("Fastest part, held", up(motion.heldFastestPartMmS(), "mm/s") + part));
        facts.add(new FactView("One pass", up(motion.cycleTimeS(), "s")));
        facts.add(new FactView("One pass, full power", up(motion.fullPowerCycleTimeS(), "s")));
        facts.add(new FactView("Reaches out", up(motion.largestRadiusMm(), "mm")));
        facts.add(new FactView("Separation", up(motion.separationMm(), "mm")));
        if (motion.stopTravelMm() != null) {
            motion.stopTravelMm()
                    .forEach((seconds, travel) ->
                            facts.add(new FactView("Stop travel, " + seconds + " s", up(travel, "mm"))));
        }
        return facts;
    }

    private static ColumnView column(AnswerDetails.Column column) {
        return new ColumnView(
                column.item(), column.declared(), column.found(), null, column.agrees() ? "waiting" : "disagrees");
    }

    private static List<StepView> steps(AnswerDocument.Motion motion) {
        return motion.steps().stream()
                .map(step -> step(step, motion.peakStep()))
                .toList();
    }

    private static StepView step(AnswerDocument.Step step, @Nullable Integer peakStep) {
        boolean closing = Objects.equals(step.closing(), true);
        return new StepView(
                step.step() + (closing ? "-closing" : ""),
                closing ? step.step() + ", closing" : String.valueOf(step.step()),
                step.kind(),
                step.line(),
                up(step.durationS(), "s"),
                up(step.heldToolPeakMmS(), ""),
                up(step.fullPowerToolPeakMmS(), ""),
                up(step.heldElbowPeakMmS(), ""),
                up(step.heldFastestPartMmS(), ""),
                !closing && Objects.equals(step.step(), peakStep));
    }

    private static String up(@Nullable Double value, String unit) {
        if (value == null) {
            return "not known";
        }
        int decimals = unit.equals("s") || unit.equals("kg") ? 2 : 1;
        return (ShownNumber.up(value, decimals) + " " + unit).strip();
    }

    static String words(StoredAnswer.Verdict verdict) {
        return verdict.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
