package org.standclear.core.check;

import java.util.AbstractList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import org.standclear.core.limits.ContactSpeeds;
import org.standclear.core.limits.Details;
import org.standclear.core.limits.Finding;
import org.standclear.core.limits.LimitInForce;
import org.standclear.core.limits.LimitSource;
import org.standclear.core.limits.MotionFigures;
import org.standclear.core.motion.Peaks;
import org.standclear.core.motion.StepMotion;
import org.standclear.core.program.DeclarationField;
import org.standclear.core.program.MotionPlan;

/** An answer as nested maps and lists ({@code answer-format: 1}), ready for JSON; no number is rounded. */
public final class AnswerDocument {

    private static final int FORMAT = 1;

    private AnswerDocument() {}

    /** The whole answer. The list of steps is made as it is read, so a long program needs little memory. */
    public static Map<String, @Nullable Object> of(CheckAnswer answer) {
        Map<String, @Nullable Object> document = new LinkedHashMap<>();
        document.put("answer-format", FORMAT);
        document.put("answer", answer.answer().word());
        document.put("note", CheckAnswer.NOTE);
        document.put("rule-set", answer.ruleSet());
        document.put("cell", cell(answer));
        document.put("program", program(answer));
        document.put("declared", declared(answer));
        document.put("limits", limits(answer));
        document.put("motion", motion(answer));
        document.put("findings", mapped(answer.findings(), AnswerDocument::finding));
        document.put("contact", mapped(answer.contact(), AnswerDocument::contact));
        return Collections.unmodifiableMap(document);
    }

    private static Map<String, @Nullable Object> cell(CheckAnswer answer) {
        Map<String, @Nullable Object> cell = new LinkedHashMap<>();
        cell.put("name", answer.program().cell().name());
        cell.put("version", answer.program().cell().version());
        return cell;
    }

    private static Map<String, @Nullable Object> program(CheckAnswer answer) {
        MotionPlan plan = answer.program().plan();
        Map<String, @Nullable Object> program = new LinkedHashMap<>();
        program.put("title", plan.title());
        program.put("sha256", answer.sha256());
        program.put("reader", plan.reader());
        program.put("lines-understood", plan.coverage().linesUnderstood());
        program.put("lines-total", plan.coverage().linesTotal());
        return program;
    }

    private static Map<String, @Nullable Object> declared(CheckAnswer answer) {
        Map<String, @Nullable Object> declared = new LinkedHashMap<>();
        for (DeclarationField field : DeclarationField.values()) {
            Object value = field.in(answer.declaration());
            if (value != null) {
                declared.put(field.word(), value instanceof Double ? value : field.shown(value));
            }
        }
        return declared;
    }

    private static Map<String, @Nullable Object> limits(CheckAnswer answer) {
        Map<String, @Nullable Object> limits = new LinkedHashMap<>();
        limits.put("override-percent", limit(answer.overrideLimit()));
        limits.put("tool-speed-mm-s", limit(answer.toolSpeedLimit()));
        return limits;
    }

    private static Map<String, @Nullable Object> limit(LimitInForce limit) {
        Map<String, @Nullable Object> map = new LinkedHashMap<>();
        map.put("value", limit.value());
        map.put("from", limit.from().word());
        return map;
    }

    private static Map<String, @Nullable Object> motion(CheckAnswer answer) {
        MotionFigures figures = answer.figures();
        Optional<StepMotion> peak = figures.fastestMmS() == null
                ? Optional.empty()
                : answer.motion().stepOfGreatest(Peaks::fastest);
        Map<String, @Nullable Object> motion = new LinkedHashMap<>();
        motion.put("cycle-time-s", answer.motion().cycleTimeS());
        motion.put("full-power-cycle-time-s", answer.motion().fullPowerCycleTimeS());
        motion.put("held-tool-peak-mm-s", figures.toolPeakMmS());
        motion.put("full-power-tool-peak-mm-s", figures.fullPowerPeakMmS());
        motion.put("held-fastest-part-mm-s", figures.fastestMmS());
        motion.put(
                "fastest-part",
                peak.map(StepMotion::peaks)
                        .map(Peaks::part)
                        .map(part -> part.word(answer.program().cell().arm()))
                        .orElse(null));
        motion.put("peak-step", peak.map(StepMotion::step).orElse(null));
        motion.put("largest-radius-mm", figures.radiusMm());
        motion.put("separation-mm", figures.separationMm());
        Map<String, @Nullable Object> travel = new LinkedHashMap<>();
        travel.put("0.5", figures.stopTravelMm(0.5));
        travel.put("1.0", figures.stopTravelMm(1.0));
        motion.put("stop-travel-mm", travel);
        motion.put("steps", mapped(answer.motion().steps(), AnswerDocument::step));
        return motion;
    }

    private static Map<String, @Nullable Object> step(StepMotion step) {
        Optional<Peaks> peaks = Optional.ofNullable(step.peaks());
        Map<String, @Nullable Object> map = new LinkedHashMap<>();
        map.put("step", step.step());
        map.put("kind", step.kind().word());
        map.put("line", step.line());
        if (step.closing()) {
            map.put("closing", true);
        }
        map.put("duration-s", step.durationS());
        map.put("full-power-duration-s", step.fullPowerDurationS());
        map.put("full-power-tool-peak-mm-s", peaks.map(Peaks::fullPowerTool).orElse(null));
        map.put("held-tool-peak-mm-s", peaks.map(Peaks::heldTool).orElse(null));
        map.put("held-elbow-peak-mm-s", peaks.map(Peaks::heldElbow).orElse(null));
        map.put("held-fastest-part-mm-s", peaks.map(Peaks::fastest).orElse(null));
        return map;
    }

    private static Map<String, @Nullable Object> finding(Finding finding) {
        Details details = finding.details();
        Map<String, @Nullable Object> map = new LinkedHashMap<>();
        map.put("check", details.check().word());
        map.put("outcome", finding.outcome());
        map.put("blocks", finding.blocks());
        putKnown(map, "observed", details.observed());
        putKnown(map, "limit", details.limit());
        putKnown(map, "unit", details.unit());
        LimitSource from = details.limitFrom();
        putKnown(map, "limit-from", from == null ? null : from.word());
        putKnown(map, "step", details.step());
        putKnown(map, "line", details.line());
        map.put("says", details.says());
        return map;
    }

    private static void putKnown(Map<String, @Nullable Object> map, String name, @Nullable Object value) {
        if (value != null) {
            map.put(name, value);
        }
    }

    private static Map<String, @Nullable Object> contact(ContactSpeeds.Permitted permitted) {
        Map<String, @Nullable Object> map = new LinkedHashMap<>();
        map.put("region", permitted.region().word());
        map.put("permitted-mm-s", Double.isFinite(permitted.permittedMmS()) ? permitted.permittedMmS() : null);
        return map;
    }

    private static <T> List<Map<String, @Nullable Object>> mapped(
            List<T> items, Function<T, Map<String, @Nullable Object>> form) {
        return new AbstractList<>() {
            @Override
            public Map<String, @Nullable Object> get(int index) {
                return form.apply(items.get(index));
            }

            @Override
            public int size() {
                return items.size();
            }
        };
    }
}
