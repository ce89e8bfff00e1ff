package org.standclear.commandline;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import org.springframework.dao.DataAccessException;
import org.standclear.trail.KeptHash;
import org.standclear.trail.OfflineRecord;
import org.standclear.trail.OfflineRecord.LabName;
import org.standclear.trail.TrailVerification;
import org.standclear.trail.TrailVerification.Broken;
import org.standclear.trail.TrailVerification.Whole;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** Recomputes the record's chain straight from the database. */
@Command(
        name = "verify",
        mixinStandardHelpOptions = true,
        description = {
            "Recomputes the record from its first entry and names the first one that does not fit.",
            "Without options, connects as the web application would.",
            "Exit status: 0 whole, 1 broken, 64 wrong usage or no database."
        },
        exitCodeOnInvalidInput = Commands.WRONG_USAGE)
final class VerifyCommand implements Callable<Integer> {

    private static final int WHOLE = 0;
    private static final int BROKEN = 1;
    private static final Pattern KEPT = Pattern.compile("([1-9][0-9]{0,17}):([0-9a-fA-F]{64})");

    @Spec
    private CommandSpec spec = CommandSpec.create();

    @Option(
            names = "--url",
            paramLabel = "JDBC",
            description = "The database, for example jdbc:postgresql://db/standclear")
    private @Nullable String url;

    @Option(names = "--user", paramLabel = "U", description = "The database's user")
    private @Nullable String user;

    @Option(
            names = "--password-file",
            paramLabel = "F",
            description = "A file with the user's password in its first line")
    private @Nullable Path passwordFile;

    @Option(
            names = "--kept",
            paramLabel = "N:HASH",
            description = "Number and hash of an entry that an earlier verify printed")
    private @Nullable String kept;

    @Override
    public Integer call() {
        KeptHash keptHash = keptHash();
        ConfiguredDatabase database = ConfiguredDatabase.found().with(url, user, password());
        try {
            return verify(new OfflineRecord(database.open()), keptHash);
        } catch (DataAccessException notThere) {
            throw wrongUsage("No record can be read at " + database.url() + ": "
                    + notThere.getMostSpecificCause().getMessage());
        }
    }

    private int verify(OfflineRecord record, @Nullable KeptHash keptHash) {
        boolean whole = true;
        for (LabName lab : record.labs()) {
            TrailVerification found = record.verify(lab.id());
            whole &= found instanceof Whole;
            out().println(words(found) + " (" + lab.words() + ")");
            if (keptHash != null) {
                KeptHash.Comparison comparison = record.compare(keptHash, lab.id());
                whole &= comparison.same();
                out().println(comparison.says());
            }
        }
        return whole ? WHOLE : BROKEN;
    }

    private static String words(TrailVerification found) {
        if (found instanceof Broken broken) {
            return "broken at entry " + broken.firstBrokenEntry() + ": " + broken.says();
        }
        Whole whole = (Whole) found;
        return "whole: " + whole.entries() + (whole.entries() == 1 ? " entry" : " entries") + ", last hash "
                + whole.lastHash();
    }

    private @Nullable KeptHash keptHash() {
        if (kept == null) {
            return null;
        }
        Matcher parts = KEPT.matcher(kept);
        if (!parts.matches()) {
            throw wrongUsage("--kept takes a number, a colon and 64 characters of hash, as verify prints them.");
        }
        return new KeptHash(Long.parseLong(parts.group(1)), parts.group(2).toLowerCase(java.util.Locale.ROOT));
    }

    private @Nullable String password() {
        if (passwordFile == null) {
            return null;
        }
        try {
            return Files.readString(passwordFile).lines().findFirst().orElse("");
        } catch (IOException notReadable) {
            throw wrongUsage("The password file " + passwordFile + " cannot be read.");
        }
    }

    private ParameterException wrongUsage(String says) {
        return new ParameterException(spec.commandLine(), says);
    }

    private PrintWriter out() {
        return spec.commandLine().getOut();
    }
}
