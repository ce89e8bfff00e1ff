package org.standclear.testing;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

/** Who can sign in at the demo college, read from the files that it is loaded from. */
public final class DemoCollege {

    private static final Path SEED = Path.of("seed-data");

    private DemoCollege() {}

    /** The password that all of the demo's people share. */
    public static String password() {
        return setting("password");
    }

    /** The signing PIN that all of the demo's people share. */
    public static String pin() {
        return setting("pin");
    }

    /** The sign-in names of everybody with that role, in the order of the file. */
    public static List<String> logins(String role) {
        return lines("people.csv").stream()
                .map(line -> line.split(","))
                .filter(fields -> List.of(fields).contains(role))
                .map(fields -> fields[0])
                .toList();
    }

    private static String setting(String name) {
        return lines("lab.yaml").stream()
                .filter(line -> line.startsWith(name + ":"))
                .map(line -> line.substring(name.length() + 1).strip().replace("\"", ""))
                .findFirst()
                .orElseThrow();
    }

    private static List<String> lines(String file) {
        try {
            return Files.readAllLines(SEED.resolve(file));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
