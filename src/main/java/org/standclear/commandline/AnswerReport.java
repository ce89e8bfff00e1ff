package org.standclear.commandline;

import static org.standclear.core.quantity.ShownNumber.up;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.standclear.core.check.CheckAnswer;
import org.standclear.core.limits.Details;
import org.standclear.core.limits.Finding;
import org.standclear.core.motion.Peaks;
import org.standclear.core.motion.StepMotion;

/** An answer as a page of plain text. */
final class AnswerReport {

    private static final int MOST_STEPS = 200;

    private final StringBuilder text = new StringBuilder();

    private AnswerReport() {}

    static String of(CheckAnswer answer) {
        AnswerReport report = new AnswerReport();
        report.head(answer);
        report.findings(answer.findings());
        report.motion(answer);
        report.steps(answer.motion().steps());
        report.line("");
        report.line(CheckAnswer.NOTE);
        return report.text.toString();
    }

    private void line(String content) {
        text.append(content).append(System.lineSeparator());
    }

    private void head(CheckAnswer answer) {
        String title = answer.program().plan().title();
        line((title == null ? "The program" : title) + ": " + answer.answer().words() + ", checked against "
                + answer.program().cell().name() + " v"
                + answer.program().cell().version());
        line("Fingerprint " + answer.sha256());
        line("");
    }

    private void findings(List<Finding> findings) {
        findings.stream().filter(Finding::blocks).forEach(this::finding);
        findings.stream().filter(finding -> !finding.blocks()).forEach(this::finding);
    }

    private void finding(Finding finding) {
        Details details = finding.details();
        String line = details.line() == null ? "" : " (line " + details.line() + ")";
        line(String.format(
                "%-14s %-22s %s%s", finding.outcome(), details.check().word(), details.says(), line));
    }

    private void motion(CheckAnswer answer) {
        line("");
        line("One pass: " + shown(answer.motion().cycleTimeS(), 2, " s") + "; in full power: "
                + shown(answer.motion().fullPowerCycleTimeS(), 2, " s") + ".");
        line("Tool point held to: " + shown(answer.figures().toolPeakMmS(), 1, " mm/s")
                + "; in full power it would reach: "
                + shown(answer.figures().fullPowerPeakMmS(), 1, " mm/s") + ".");
        line("Fastest part: " + shown(answer.figures().fastestMmS(), 1, " mm/s")
                + "; stop travel when the e-stop is pressed after 0.5 s: "
                + shown(answer.figures().stopTravelMm(0.5), 0, " mm") + ", after 1 s: "
                + shown(answer.figures().stopTravelMm(1.0), 0, " mm") + ".");
        line("");
    }

    private void steps(List<StepMotion> steps) {
        line(String.format(
                "%6s %-9s %6s %10s %12s %12s %12s", "step", "kind", "line", "seconds", "tool mm/s", "fastest", "full"));
        steps.stream().limit(MOST_STEPS).forEach(this::step);
        if (steps.size() > MOST_STEPS) {
            line("... and " + (steps.size() - MOST_STEPS) + " more; --json shows all");
        }
    }

    private void step(StepMotion step) {
        Peaks peaks = step.peaks();
        line(String.format(
                "%6d %-9s %6d %10s %12s %12s %12s%s",
                step.step(),
                step.kind().word(),
                step.line(),
                shown(step.durationS(), 2),
                shown(peaks == null ? null : peaks.heldTool(), 1),
                shown(peaks == null ? null : peaks.fastest(), 1),
                shown(peaks == null ? null : peaks.fullPowerTool(), 1),
                step.closing() ? "  closes the loop" : ""));
    }

    private static String shown(@Nullable Double value, int decimals) {
        return shown(value, decimals, "");
    }

    private static String shown(@Nullable Double value, int decimals, String unit) {
        return value == null ? "not known" : up(value, decimals) + unit;
    }
}
