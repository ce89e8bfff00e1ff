package org.standclear.commandline;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import org.standclear.core.cell.CellDescription;
import org.standclear.core.cell.CellFileReader;
import org.standclear.core.check.CheckAnswer;
import org.standclear.core.check.CheckRequest;
import org.standclear.core.check.ProgramCheck;
import org.standclear.core.check.ProgramFile;
import org.standclear.core.check.ReaderChoice;
import org.standclear.core.limits.ContactTableReader;
import org.standclear.core.limits.CourseLimits;
import org.standclear.core.program.Declaration;
import org.standclear.core.program.DeclarationReader;
import org.standclear.core.program.MotionSheetReader;
import org.standclear.core.program.ProgramReader;
import org.standclear.core.program.blocks.BlockReader;
import org.standclear.core.program.phrases.Phrasebook;
import org.standclear.core.program.phrases.PhrasebookReader;
import org.standclear.core.text.InputText;
import org.standclear.core.text.Reading;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** What every check on the command line is made with: the cell, and what stands beside the programs. */
final class CheckInputs {

    private static final String SHEET = "motion-sheet";
    private static final String PHRASEBOOK = "phrasebook";
    private static final Map<String, String> READERS =
            Map.of("auto", "", SHEET, SHEET, BlockReader.NAME, BlockReader.NAME, PHRASEBOOK, PHRASEBOOK);

    @Spec(Spec.Target.MIXEE)
    private CommandSpec spec = CommandSpec.create();

    @Option(names = "--cell", required = true, paramLabel = "CELL.yaml", description = "The cell file")
    private Path cell = Path.of("");

    @Option(names = "--declaration", paramLabel = "DECL.yaml", description = "A declaration beside the program's own")
    private @Nullable Path declaration;

    @Option(
            names = "--phrasebook",
            paramLabel = "BOOK.yaml",
            description = "The phrasebook of the robot's language, for programs written in it")
    private @Nullable Path phrasebook;

    @Option(
            names = "--reader",
            paramLabel = "READER",
            defaultValue = "auto",
            description = {
                "How programs are read: motion-sheet, iso-6983, phrasebook or auto (when left out). auto goes by the"
                        + " content: a field motion-sheet makes it a motion sheet; a first line that the phrasebook"
                        + " knows, a program in its language; a first line of a letter and a number, blocks of ISO 6983."
            })
    private String reader = "auto";

    @Option(names = "--contact-table", paramLabel = "TABLE.yaml", description = "The college's own contact table")
    private @Nullable Path contactTable;

    @Option(
            names = "--course-override-percent",
            paramLabel = "PERCENT",
            description = "The course's override limit; without it only the cell's counts (50 is usual)")
    private @Nullable Double courseOverride;

    @Option(names = "--course-tool-speed-mm-s", paramLabel = "SPEED", description = "The course's tool speed limit")
    private @Nullable Double courseToolSpeed;

    /** Ends a command with one line on what cannot be read. */
    static final class UnreadableException extends Exception {

        private static final long serialVersionUID = 1L;

        UnreadableException(String says) {
            super(says);
        }
    }

    /** Checks program after program with the same inputs, which are read once. */
    @FunctionalInterface
    interface Checking {
        CheckAnswer check(Path program) throws UnreadableException;
    }

    /** Reads everything but the programs. */
    Checking checking() throws UnreadableException {
        requireReader();
        CourseLimits course = course();
        CellDescription description = read(cell, InputText.OTHER_BYTES, other(CellFileReader::read));
        Declaration declared = ifGiven(declaration, DeclarationReader::read);
        Phrasebook book = ifGiven(phrasebook, Phrasebook::read);
        var table = contactTable == null
                ? ContactTableReader.shipped()
                : read(contactTable, InputText.OTHER_BYTES, other(ContactTableReader::read));
        return program -> {
            ProgramFile file = read(program, InputText.PROGRAM_BYTES, ProgramFile::of);
            return value(
                    program,
                    ProgramCheck.check(
                            new CheckRequest(description, file, reader(file.text(), book), declared, course, table)));
        };
    }

    private void requireReader() {
        if (!READERS.containsKey(reader)) {
            throw new ParameterException(
                    spec.commandLine(),
                    "--reader is motion-sheet, iso-6983, phrasebook or auto, not \"" + reader + "\".");
        }
        if (reader.equals(PHRASEBOOK) && phrasebook == null) {
            throw new ParameterException(spec.commandLine(), "--reader phrasebook needs --phrasebook BOOK.yaml.");
        }
    }

    private ProgramReader reader(String text, @Nullable Phrasebook book) {
        return switch (reader) {
            case SHEET -> new MotionSheetReader();
            case BlockReader.NAME -> new BlockReader();
            default ->
                book != null && reader.equals(PHRASEBOOK) ? new PhrasebookReader(book) : ReaderChoice.of(text, book);
        };
    }

    private CourseLimits course() {
        try {
            return new CourseLimits(courseOverride, courseToolSpeed);
        } catch (IllegalArgumentException e) {
            throw new ParameterException(spec.commandLine(), "The course's limits: " + e.getMessage() + ".", e);
        }
    }

    private static <T> @Nullable T ifGiven(@Nullable Path path, Function<String, Reading<T>> reader)
            throws UnreadableException {
        return path == null ? null : read(path, InputText.OTHER_BYTES, other(reader));
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
