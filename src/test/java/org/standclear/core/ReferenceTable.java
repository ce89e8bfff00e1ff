package org.standclear.core;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;

/** Reference numbers that KDL computed (grade C); docs/reference/kdl makes them anew. */
public final class ReferenceTable {

    private ReferenceTable() {}

    /** The rows of a table without its heading. */
    public static List<double[]> rows(String name) {
        try {
            return Files.readAllLines(Path.of("src", "test", "resources", "reference", "kdl", name)).stream()
                    .filter(line -> !line.startsWith("#"))
                    .skip(1)
                    .map(line -> Arrays.stream(line.split(","))
                            .mapToDouble(Double::parseDouble)
                            .toArray())
                    .toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
