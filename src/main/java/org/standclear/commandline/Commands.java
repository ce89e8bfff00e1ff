package org.standclear.commandline;

import java.io.PrintWriter;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** All commands of the jar; without one the jar starts the web application. */
@Command(
        name = "standclear",
        mixinStandardHelpOptions = true,
        version = "Standclear",
        synopsisSubcommandLabel = "COMMAND",
        description = "Without a command, starts the web application.",
        exitCodeOnInvalidInput = Commands.WRONG_USAGE,
        subcommands = {CheckCommand.class, CheckAllCommand.class, VerifyCommand.class})
public final class Commands implements Runnable {

    /** Wrong usage, or input that cannot be read (EX_USAGE of sysexits.h). */
    static final int WRONG_USAGE = 64;

    @Spec
    private CommandSpec spec = CommandSpec.create();

    Commands() {}

    /** Whether the arguments ask for a command rather than for the web application. */
    public static boolean areMeantBy(String... arguments) {
        return arguments.length > 0
                && (!arguments[0].startsWith("-") || arguments[0].matches("-h|--help|-V|--version"));
    }

    /** Runs the command and returns the exit status. */
    public static int run(PrintWriter out, PrintWriter err, String... arguments) {
        return new CommandLine(new Commands()).setOut(out).setErr(err).execute(arguments);
    }

    @Override
    public void run() {
        throw new ParameterException(spec.commandLine(), "Name a command.");
    }
}
