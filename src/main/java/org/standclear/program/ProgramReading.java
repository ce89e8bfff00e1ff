package org.standclear.program;

import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import org.standclear.core.check.ReaderChoice;
import org.standclear.core.difference.ReadProgram;
import org.standclear.core.program.Declaration;
import org.standclear.core.program.DeclarationReader;
import org.standclear.core.program.DeclarationWriter;
import org.standclear.core.program.MotionPlan;
import org.standclear.core.program.ProgramReader;
import org.standclear.core.program.phrases.PhrasebookReader;
import org.standclear.core.text.InputText;
import org.standclear.core.text.Reading;

/**
 * Reads a program and its separate declaration by the core's readers, to refuse bad input before anything is kept. For
 * which cell a program is, is not said yet: it may be in the language of any cell's phrasebook.
 */
@Component
class ProgramReading {

    private final Phrasebooks phrasebooks;

    ProgramReading(Phrasebooks phrasebooks) {
        this.phrasebooks = phrasebooks;
    }

    /** Reads both; the declaration is YAML text, null when only the file declares. */
    Outcome read(byte[] bytes, @Nullable String declaration) {
        Reading<MotionPlan> plan =
                InputText.ofProgram(bytes).then(text -> reader(text).read(text));
        if (plan instanceof Reading.Refused<MotionPlan> refused) {
            return new Unreadable("file", Sentences.of(refused.why()));
        }
        String title = plan.value().title();
        if (declaration == null) {
            return new Readable(title, null);
        }
        Reading<Declaration> declared = DeclarationReader.read(declaration);
        if (declared instanceof Reading.Refused<Declaration> refused) {
            return new Unreadable("declaration", Sentences.of(refused.why()));
        }
        return declared(plan.value(), declared.value());
    }

    /** What was kept before, as it is understood now; empty when it cannot be read any more. */
    Optional<ReadProgram> understood(byte[] bytes, @Nullable String declaration) {
        Reading<MotionPlan> plan =
                InputText.ofProgram(bytes).then(text -> reader(text).read(text));
        if (plan instanceof Reading.Refused<MotionPlan>) {
            return Optional.empty();
        }
        Declaration separate =
                declaration == null ? null : DeclarationReader.read(declaration).value();
        return Optional.of(ReadProgram.of(plan.value(), separate));
    }

    /** A phrasebook whose first line fits, else what the content alone tells. */
    private ProgramReader reader(String text) {
        for (PhrasebookVersion version : phrasebooks.allCurrent()) {
            PhrasebookReader phrases = version.reader();
            if (phrases.understandsTheFirstLine(text)) {
                return ReaderChoice.of(text, phrases);
            }
        }
        return ReaderChoice.of(text, (PhrasebookReader) null);
    }

    private static Outcome declared(MotionPlan plan, Declaration declaration) {
        String start = declaration.start();
        if (start != null && plan.point(start).isEmpty()) {
            return new Unreadable("declaration", "The start names a point that the program does not define: " + start);
        }
        return new Readable(plan.title(), declaration.isEmpty() ? null : DeclarationWriter.write(declaration));
    }

    /** What reading gave. */
    sealed interface Outcome {}

    /**
     * Both can be read.
     *
     * @param title the one the file names; null when it names none
     * @param declaration in its canonical text; null when there is none
     */
    record Readable(@Nullable String title, @Nullable String declaration) implements Outcome {}

    /** One of them cannot; names the field and says what is wrong at which line. */
    record Unreadable(String field, String says) implements Outcome {}
}
