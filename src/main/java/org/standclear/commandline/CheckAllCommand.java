package org.standclear.commandline;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.standclear.commandline.CheckInputs.UnreadableException;
import org.standclear.core.check.CheckAnswer;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Checks every program in a folder of homework against one cell file. */
@Command(
        name = "check-all",
        mixinStandardHelpOptions = true,
        description = {
            "Checks every file in a folder, and in the folders below it, against one cell file; prints a table. Hidden"
                    + " files are left out.",
            "Exit status: 0 all within limits, 1 some outside limits, 2 some not checkable and none outside, 64 some"
                    + " unreadable, or wrong usage.",
            "Arithmetic on what is declared; not a measurement and not a safety function."
        },
        exitCodeOnInvalidInput = Commands.WRONG_USAGE,
        exitCodeOnExecutionException = CheckCommand.FAULT)
final class CheckAllCommand implements Callable<Integer> {

    private static final int DEEPEST = 8;
    private static final int MOST_FILES = 10_000;

    @Spec
    private CommandSpec spec = CommandSpec.create();

    @Mixin
    private CheckInputs inputs = new CheckInputs();

    @Parameters(paramLabel = "FOLDER", description = "The folder with the programs")
    private Path folder = Path.of("");

    @Option(names = "--csv", paramLabel = "FILE.csv", description = "Write the table as CSV (RFC 4180, UTF-8) too")
    private @Nullable Path csv;

    @Override
    public Integer call() {
        PrintWriter out = spec.commandLine().getOut();
        try {
            List<HomeworkRow> rows = rows(inputs.checking());
            out.print(HomeworkTable.text(rows));
            out.println(CheckAnswer.NOTE);
            out.flush();
            if (csv != null) {
                write(csv, HomeworkTable.csv(rows));
            }
            return HomeworkRow.status(rows);
        } catch (UnreadableException e) {
            PrintWriter err = spec.commandLine().getErr();
            err.println(e.getMessage());
            err.flush();
            return Commands.WRONG_USAGE;
        }
    }

    private List<HomeworkRow> rows(CheckInputs.Checking checking) {
        List<HomeworkRow> rows = new ArrayList<>();
        for (Path file : files()) {
            String name = folder.relativize(file).toString();
            try {
                rows.add(HomeworkRow.of(name, checking.check(file)));
            } catch (UnreadableException e) {
                String says = e.getMessage() == null ? "" : e.getMessage();
                rows.add(HomeworkRow.unreadable(name, says.replace(file.toString() + ", ", "")));
            }
        }
        return rows;
    }

    private List<Path> files() {
        if (!Files.isDirectory(folder)) {
            throw wrong(folder + " is no folder.");
        }
        try (Stream<Path> walk = Files.walk(folder, DEEPEST)) {
            List<Path> files = walk.filter(path -> Files.isRegularFile(path, LinkOption.NOFOLLOW_LINKS))
                    .filter(path -> !isHidden(folder.relativize(path)) && !path.equals(csv))
                    .sorted()
                    .limit(MOST_FILES + 1L)
                    .toList();
            if (files.isEmpty() || files.size() > MOST_FILES) {
                throw wrong(folder + (files.isEmpty() ? " has no files." : " has more than " + MOST_FILES + " files."));
            }
            return files;
        } catch (IOException | java.io.UncheckedIOException e) {
            throw wrong(folder + " cannot be read.");
        }
    }

    private static boolean isHidden(Path path) {
        for (Path part : path) {
            if (part.toString().startsWith(".")) {
                return true;
            }
        }
        return false;
    }

    private static void write(Path file, String text) throws UnreadableException {
        try {
            Files.writeString(file, text, StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UnreadableException(file + " cannot be written.");
        }
    }

    private ParameterException wrong(String says) {
        return new ParameterException(spec.commandLine(), says);
    }
}
