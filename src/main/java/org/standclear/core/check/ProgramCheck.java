package org.standclear.core.check;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.standclear.core.limits.CheckedProgram;
import org.standclear.core.limits.ContactSpeeds;
import org.standclear.core.limits.Finding;
import org.standclear.core.limits.rules.Rules;
import org.standclear.core.motion.ProgramMotion;
import org.standclear.core.program.DeclarationField;
import org.standclear.core.program.Declared;
import org.standclear.core.program.MotionPlan;
import org.standclear.core.program.Point;
import org.standclear.core.text.BadInputException;
import org.standclear.core.text.Reading;
import org.standclear.core.text.Words;

/** The check: reads a program, computes how it moves the arm of a cell, and asks every rule. */
public final class ProgramCheck {

    private ProgramCheck() {}

    /** The answer; refused when the program cannot be read, or does not fit the arm of the cell. */
    public static Reading<CheckAnswer> check(CheckRequest request) {
        return request.reader().read(request.program().text()).then(plan -> Reading.of(() -> answer(request, plan)));
    }

    private static CheckAnswer answer(CheckRequest request, MotionPlan read) {
        Declared declared = Declared.of(request.declaration(), read);
        PointsFit.require(request.cell().arm(), request.reader(), read, start(declared, read));
        MotionPlan plan =
                read.on(request.cell().arm(), request.cell().fittedTool().offset());
        Point start = start(declared, plan);
        ProgramMotion motion = ProgramMotion.of(request.cell(), plan, declared, start);
        CheckedProgram program =
                CheckedProgram.of(request.cell(), request.course(), request.contactTable(), plan, declared, motion);
        List<Finding> findings =
                Rules.ALL.stream().flatMap(rule -> rule.findings(program)).toList();
        return new CheckAnswer(
                RuleSet.CURRENT,
                worst(findings),
                request.program().sha256(),
                program,
                findings,
                ContactSpeeds.of(program));
    }

    private static @Nullable Point start(Declared declared, MotionPlan plan) {
        String name = declared.values().start();
        if (name == null) {
            return null;
        }
        return plan.point(name)
                .orElseThrow(() -> new BadInputException(
                        declared.lines().getOrDefault(DeclarationField.START, 0),
                        "the declared start is " + Words.quoted(name) + ", which is not among the program's points"));
    }

    private static CheckAnswer.Answer worst(List<Finding> findings) {
        if (findings.stream().anyMatch(finding -> finding instanceof Finding.Outside)) {
            return CheckAnswer.Answer.OUTSIDE;
        }
        return findings.stream().anyMatch(Finding::blocks)
                ? CheckAnswer.Answer.NOT_CHECKABLE
                : CheckAnswer.Answer.WITHIN;
    }
}
