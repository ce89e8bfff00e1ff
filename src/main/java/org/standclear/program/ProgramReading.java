package org.standclear.program;

import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import org.standclear.core.program.Declaration;
import org.standclear.core.program.DeclarationReader;
import org.standclear.core.program.DeclarationWriter;
import org.standclear.core.program.MotionPlan;
import org.standclear.core.program.MotionSheetReader;
import org.standclear.core.program.ProgramReader;
import org.standclear.core.text.BadInput;
import org.standclear.core.text.InputText;
import org.standclear.core.text.Reading;

/** Reads a program and its separate declaration by the core's readers, to refuse bad input before anything is kept. */
@Component
class ProgramReading {

    private final ProgramReader reader = new MotionSheetReader();

    /** Reads both; the declaration is YAML text, null when only the file declares. */
    Outcome read(byte[] bytes, @Nullable String declaration) {
        Reading<MotionPlan> plan = InputText.ofProgram(bytes).then(reader::read);
        if (plan instanceof Reading.Refused<MotionPlan> refused) {
            return new Unreadable("file", sentence(refused.why()));
        }
        String title = plan.value().title();
        if (declaration == null) {
            return new Readable(title, null);
        }
        Reading<Declaration> declared = DeclarationReader.read(declaration);
        if (declared instanceof Reading.Refused<Declaration> refused) {
            return new Unreadable("declaration", sentence(refused.why()));
        }
        return declared(plan.value(), declared.value());
    }

    private static Outcome declared(MotionPlan plan, Declaration declaration) {
        String start = declaration.start();
        if (start != null && plan.point(start).isEmpty()) {
            return new Unreadable("declaration", "The start names a point that the program does not define: " + start);
        }
        return new Readable(plan.title(), declaration.isEmpty() ? null : DeclarationWriter.write(declaration));
    }

    private static String sentence(BadInput bad) {
        String sentence = bad.sentence();
        return Character.toUpperCase(sentence.charAt(0)) + sentence.substring(1) + (sentence.endsWith(".") ? "" : ".");
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
