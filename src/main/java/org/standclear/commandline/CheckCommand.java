package org.standclear.commandline;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.standclear.commandline.CheckInputs.UnreadableException;
import org.standclear.core.check.AnswerDocument;
import org.standclear.core.check.CheckAnswer;
import org.standclear.core.check.JsonText;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Checks a program against a cell file, with no server and no database. */
@Command(
        name = "check",
        mixinStandardHelpOptions = true,
        description = {
            "Checks a program against a cell file: a motion sheet, blocks of ISO 6983, or a language that a phrasebook"
                    + " describes.",
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

    @Mixin
    private CheckInputs inputs = new CheckInputs();

    @Parameters(paramLabel = "PROGRAM", description = "The program file")
    private Path program = Path.of("");

    @Option(names = "--json", description = "Print the answer as JSON (answer-format 1)")
    private boolean json;

    /** The exit status of an answer. */
    static int status(CheckAnswer.Answer answer) {
        return switch (answer) {
            case WITHIN -> 0;
            case OUTSIDE -> 1;
            case NOT_CHECKABLE -> 2;
        };
    }

    @Override
    public Integer call() {
        PrintWriter out = spec.commandLine().getOut();
        try {
            CheckAnswer answer = inputs.checking().check(program);
            out.print(json ? JsonText.of(AnswerDocument.of(answer)) : AnswerReport.of(answer));
            out.flush();
            return status(answer.answer());
        } catch (UnreadableException e) {
            PrintWriter err = spec.commandLine().getErr();
            err.println(e.getMessage());
            err.flush();
            return Commands.WRONG_USAGE;
        }
    }
}
