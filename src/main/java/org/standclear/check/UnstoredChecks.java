package org.standclear.check;

import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Service;
import org.standclear.core.cell.CellDescription;
import org.standclear.core.check.AnswerDocument;
import org.standclear.core.check.CheckAnswer;
import org.standclear.core.check.CheckRequest;
import org.standclear.core.check.JsonText;
import org.standclear.core.check.ProgramCheck;
import org.standclear.core.check.ProgramFile;
import org.standclear.core.check.ReaderChoice;
import org.standclear.core.limits.CourseLimits;
import org.standclear.core.program.Declaration;
import org.standclear.core.program.phrases.Phrasebook;
import org.standclear.core.text.BadInput;
import org.standclear.core.text.Reading;

/** Answers what is asked once and kept nowhere, as the command line does; large programs wait for their turn. */
@Service
public class UnstoredChecks {

    private final CheckTurns turns;

    UnstoredChecks(CheckTurns turns) {
        this.turns = turns;
    }

    /**
     * What is asked.
     *
     * @param declaration null when only the program declares
     * @param phrasebook null when the program is a motion sheet or blocks
     */
    public record Question(
            CellDescription cell,
            CourseLimits course,
            byte[] program,
            @Nullable Declaration declaration,
            @Nullable Phrasebook phrasebook) {}

    /** Checks a program that is not kept; how it is read goes by its content. */
    public Outcome check(Question asked) {
        Optional<Reading<CheckAnswer>> computed = turns.take(
                asked.program().length,
                () -> ProgramFile.of(asked.program())
                        .then(file -> ProgramCheck.check(CheckRequest.of(asked.cell(), file)
                                .readBy(ReaderChoice.of(file.text(), asked.phrasebook()))
                                .declaring(asked.declaration())
                                .under(asked.course()))));
        if (computed.isEmpty()) {
            return new Outcome.Busy();
        }
        return computed.get() instanceof Reading.Refused<CheckAnswer> refused
                ? new Outcome.Unreadable(refused.why())
                : new Outcome.Answered(
                        JsonText.of(AnswerDocument.of(computed.get().value())));
    }

    /** What came of it. */
    public sealed interface Outcome {

        /** The answer, {@code answer-format: 1}. */
        record Answered(String json) implements Outcome {}

        /** The program is bad input. */
        record Unreadable(BadInput why) implements Outcome {}

        /** Too many large files are being checked just now. */
        record Busy() implements Outcome {}
    }
}
