package org.standclear.commandline;

import java.io.IOException;
import java.io.InputStream;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import org.standclear.core.cell.CellDescription;
import org.standclear.core.cell.CellFileReader;
import org.standclear.core.check.AnswerDocument;
import org.standclear.core.check.CheckAnswer;
import org.standclear.core.check.CheckRequest;
import org.standclear.core.check.JsonText;
import org.standclear.core.check.ProgramCheck;
import org.standclear.core.check.ProgramFile;
import org.standclear.core.limits.ContactTable;
import org.standclear.core.limits.ContactTableReader;
import org.standclear.core.limits.CourseLimits;
import org.standclear.core.program.Declaration;
import org.standclear.core.program.DeclarationReader;
import org.standclear.core.text.InputText;
import org.standclear.core.text.Reading;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Checks a program against a cell file, with no server and no database. */
@Command(
        name = "check",
        mixinStandardHelpOptions = true,
        description = {
            "Checks a motion sheet against a cell file.",
            "Exit status: 0 within limits, 1 outside limits, 2 not checkable, 64 wrong usage or unreadable input.",
            "Arithmetic on what is declared; not a measurement and not a safety function."
        },
        exitCodeOnInvalidInput = Commands.WRONG_USAGE,
        exitCodeOnExecutionException = CheckCommand.FAULT)
final class CheckCommand implements Callable<Integer> {

    /** The program itself failed (EX_SOFTWARE of sysexits.h): never to be taken for an answer. */
    static final int FAULT = 70;

    @Spec
    private CommandSpec spec = CommandSpec.create();

    @Option(names = "--cell", required = true, paramLabel = "CELL.yaml", description = "The cell file")
    private Path cell = Path.of("");

    @Parameters(paramLabel = "PROGRAM", description = "The motion sheet")
    private Path program = Path.of("");

    @Option(names = "--declaration", paramLabel = "DECL.yaml", description = "A declaration beside the program's own")
    private @Nullable Path declaration;

    @Option(names = "--contact-table", paramLabel = "TABLE.yaml", description = "The college's own contact table")
    private @Nullable Path contactTable;

    @Option(names = "--course-override-percent", paramLabel = "PERCENT", description = "The course's override limit")
    private @Nullable Double courseOverride;

    @Option(names = "--course-tool-speed-mm-s", paramLabel = "SPEED", description = "The course's tool speed limit")
    private @Nullable Double courseToolSpeed;

    @Option(names = "--json", description = "Print the answer as JSON (answer-format 1)")
    private boolean json;

    /** Ends the command with one line on what cannot be read. */
    private static final class UnreadableException extends Exception {

        private static final long serialVersionUID = 1L;

        UnreadableException(String says) {
            super(says);
        }
    }

    @Override
    public Integer call() {
        PrintWriter out = spec.commandLine().getOut();
        try {
            CheckAnswer answer = answer();
            out.print(json ? JsonText.of(AnswerDocument.of(answer)) : AnswerReport.of(answer));
            out.flush();
            return switch (answer.answer()) {
                case WITHIN -> 0;
                case OUTSIDE -> 1;
                case NOT_CHECKABLE -> 2;
            };
        } catch (UnreadableException e) {
            PrintWriter err = spec.commandLine().getErr();
            err.println(e.getMessage());
            err.flush();
            return Commands.WRONG_USAGE;
        }
    }

    private CheckAnswer answer() throws UnreadableException {
        CellDescription description = read(cell, InputText.OTHER_BYTES, other(CellFileReader::read));
        ProgramFile file = read(program, InputText.PROGRAM_BYTES, ProgramFile::of);
        CheckRequest request =
                CheckRequest.of(description, file).under(course()).declaring(declared());
        Path table = contactTable;
        if (table != null) {
            ContactTable own = read(table, InputText.OTHER_BYTES, other(ContactTableReader::read));
            request = request.with(own);
        }
        return value(program, ProgramCheck.check(request));
    }

    private @Nullable Declaration declared() throws UnreadableException {
        Path separate = declaration;
        return separate == null ? null : read(separate, InputText.OTHER_BYTES, other(DeclarationReader::read));
    }

    private CourseLimits course() {
        try {
            return new CourseLimits(courseOverride, courseToolSpeed);
        } catch (IllegalArgumentException e) {
            throw new ParameterException(spec.commandLine(), "The course's limits: " + e.getMessage() + ".", e);
        }
    }

    private static <T> Function<byte[], Reading<T>> other(Function<String, Reading<T>> reader) {
        return bytes -> InputText.ofOther(bytes).then(reader);
    }

    private static <T> T read(Path path, int largest, Function<byte[], Reading<T>> reader) throws UnreadableException {
        return value(path, reader.apply(bytes(path, largest)));
    }

    private static byte[] bytes(Path path, int largest) throws UnreadableException {
        try (InputStream in = Files.newInputStream(path)) {
            // one byte more than is read shows that a file is too long without holding all of it
            return in.readNBytes(largest + 1);
        } catch (IOException e) {
            throw new UnreadableException(path + ": there is no such file, or it cannot be read.");
        }
    }

    private static <T> T value(Path path, Reading<T> reading) throws UnreadableException {
        if (reading.badInput().isPresent()) {
            throw new UnreadableException(path + ", " + reading.badInput().get().sentence() + ".");
        }
        return reading.value();
    }
}
