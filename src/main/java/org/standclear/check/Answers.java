package org.standclear.check;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.standclear.check.AnswerDetails.Bound;
import org.standclear.core.cell.CellLimits;
import org.standclear.core.check.AnswerDocument;
import org.standclear.core.check.CheckAnswer;
import org.standclear.core.check.JsonText;
import org.standclear.core.limits.Check;
import org.standclear.core.limits.CourseLimits;
import org.standclear.core.limits.LimitInForce;
import org.standclear.core.limits.LimitSource;
import org.standclear.core.program.Declaration;
import org.standclear.core.quantity.ShownNumber;

/** Takes from an answer of the core what is kept and shown. */
final class Answers {

    private static final int STEPS_SHOWN = 300;

    private Answers() {}

    static StoredAnswer.Verdict verdict(CheckAnswer answer) {
        return switch (answer.answer()) {
            case WITHIN -> StoredAnswer.Verdict.WITHIN;
            case OUTSIDE -> StoredAnswer.Verdict.OUTSIDE;
            case NOT_CHECKABLE -> StoredAnswer.Verdict.NOT_CHECKABLE;
        };
    }

    static BenchFacts benchFacts(CheckAnswer answer) {
        Declaration declared = answer.declaration();
        Double part = answer.program().part().massKg();
        double tool = answer.program().cell().fittedTool().massKg();
        return new BenchFacts(
                declared.power() == null ? null : declared.power().word(),
                declared.overridePercent(),
                answer.overrideLimit().value(),
                declared.tool(),
                part,
                part == null ? null : Double.valueOf(tool + part),
                declared.loop() == null ? null : declared.loop().word(),
                answer.figures().toolPeakMmS(),
                answer.figures().fullPowerPeakMmS(),
                answer.motion().cycleTimeS(),
                answer.cautions(),
                answer.toolSpeedLimit().value(),
                answer.program().cell().limits().payloadKg());
    }

    static String json(CheckAnswer answer) {
        return JsonText.of(AnswerDocument.of(answer));
    }

    static AnswerDetails details(CheckAnswer answer, LimitsAsked limits) {
        int steps = answer.motion().steps().size();
        return new AnswerDetails(
                JsonText.of(shortened(answer)),
                Math.max(0, steps - STEPS_SHOWN),
                AnswerColumns.of(answer),
                bounds(answer, limits));
    }

    private static Map<String, @Nullable Object> shortened(CheckAnswer answer) {
        Map<String, @Nullable Object> document = new LinkedHashMap<>(AnswerDocument.of(answer));
        if (document.get("motion") instanceof Map<?, ?> motion && motion.get("steps") instanceof List<?> steps) {
            Map<String, @Nullable Object> shorter = new LinkedHashMap<>();
            motion.forEach((name, value) -> shorter.put(String.valueOf(name), value));
            shorter.put("steps", steps.subList(0, Math.min(steps.size(), STEPS_SHOWN)));
            document.put("motion", shorter);
        }
        return document;
    }

    private static List<Bound> bounds(CheckAnswer answer, LimitsAsked limits) {
        CellLimits cell = answer.program().cell().limits();
        CourseLimits course = answer.program().course();
        List<Bound> bounds = new ArrayList<>();
        Double override = course.overridePercent();
        Double speed = course.toolSpeedMmS();
        if (override != null) {
            String says = says(answer.overrideLimit(), cell.overridePercent(), override, limits.overrideOf(), " %");
            bounds.add(new Bound(Check.OVERRIDE.word(), says));
        }
        if (speed != null) {
            String says = says(answer.toolSpeedLimit(), cell.toolSpeedMmS(), speed, limits.toolSpeedOf(), " mm/s");
            bounds.add(new Bound(Check.TOOL_SPEED.word(), says));
        }
        return bounds;
    }

    private static String says(LimitInForce limit, double cell, double course, @Nullable String code, String unit) {
        String one = code == null ? "course" : "course " + code;
        if (course == cell) {
            return "cell and " + one + " set the same limit";
        }
        if (limit.from() == LimitSource.CELL) {
            return "the cell's limit counts; the " + one + "'s is " + ShownNumber.plain(course) + unit;
        }
        String strictest = code == null ? "" : ", the strictest of the operator's courses";
        return "the " + one + "'s limit counts" + strictest + "; the cell's is " + ShownNumber.plain(cell) + unit;
    }
}
