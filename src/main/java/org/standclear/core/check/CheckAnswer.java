package org.standclear.core.check;

import java.util.List;
import org.standclear.core.limits.CheckedProgram;
import org.standclear.core.limits.ContactSpeeds;
import org.standclear.core.limits.Finding;
import org.standclear.core.limits.LimitInForce;
import org.standclear.core.limits.MotionFigures;
import org.standclear.core.motion.ProgramMotion;
import org.standclear.core.program.Declaration;

/**
 * What the check answers. It is arithmetic on what was declared and what was found in the file; not a measurement and
 * not a safety function.
 *
 * @param program all that the rules looked at: cell, plan, what is declared and found, motion and its figures
 * @param contact how fast the arm may touch the listed regions
 */
public record CheckAnswer(
        String ruleSet,
        Answer answer,
        String sha256,
        CheckedProgram program,
        List<Finding> findings,
        List<ContactSpeeds.Permitted> contact) {

    /** Stands with every answer. */
    public static final String NOTE = "Arithmetic on what was declared and found in the file: not a measurement, not a"
            + " safety function. The cell's risk assessment, its guards and the people present decide.";

    public CheckAnswer {
        findings = List.copyOf(findings);
        contact = List.copyOf(contact);
    }

    /** The answer in one word: the worst of the required findings. */
    public enum Answer {
        WITHIN("within", "within limits"),
        NOT_CHECKABLE("not-checkable", "not checkable"),
        OUTSIDE("outside", "outside limits");

        private final String word;
        private final String words;

        Answer(String word, String words) {
            this.word = word;
            this.words = words;
        }

        /** As answers write it. */
        public String word() {
            return word;
        }

        /** As people say it. */
        public String words() {
            return words;
        }
    }

    /** What is declared. */
    public Declaration declaration() {
        return program.declared().values();
    }

    /** How the program moves the arm, step by step. */
    public ProgramMotion motion() {
        return program.motion();
    }

    /** The figures of the whole program. */
    public MotionFigures figures() {
        return program.figures();
    }

    /** The override that counts, and whether the cell's or the course's limit bound it. */
    public LimitInForce overrideLimit() {
        return program.overrideLimit();
    }

    /** The tool speed that counts, and whether the cell's or the course's limit bound it. */
    public LimitInForce toolSpeedLimit() {
        return program.toolSpeedLimit();
    }

    /** The findings that keep the program from being within limits. */
    public List<Finding> blocking() {
        return findings.stream().filter(Finding::blocks).toList();
    }

    /** What stays on the release card: advised limits that are not kept. */
    public List<String> cautions() {
        return findings.stream()
                .filter(Finding.Caution.class::isInstance)
                .map(finding -> finding.details().says())
                .toList();
    }
}
