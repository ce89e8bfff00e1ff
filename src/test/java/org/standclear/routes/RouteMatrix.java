package org.standclear.routes;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.springframework.http.HttpMethod;
import org.standclear.platform.security.Role;

/** What src/test/resources/route-matrix.csv says: a route a line, a column for nobody and for each role. */
record RouteMatrix(List<Row> rows) {

    static final Path FILE = Path.of("src/test/resources/route-matrix.csv");

    private static final String HEADER =
            "method,pattern,anonymous,student,technician,instructor,reviewer,administrator,bench";
    private static final List<Optional<Role>> COLUMNS = List.of(
            Optional.empty(),
            Optional.of(Role.STUDENT),
            Optional.of(Role.TECHNICIAN),
            Optional.of(Role.INSTRUCTOR),
            Optional.of(Role.REVIEWER),
            Optional.of(Role.ADMINISTRATOR),
            Optional.of(Role.BENCH));

    static RouteMatrix read() {
        try {
            return parse(Files.readAllLines(FILE, StandardCharsets.UTF_8));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    static RouteMatrix parse(List<String> lines) {
        if (!lines.get(0).equals(HEADER)) {
            throw new AssertionError(FILE + " begins with " + lines.get(0) + ", not with " + HEADER);
        }
        List<Row> rows = new ArrayList<>();
        for (String line : lines.subList(1, lines.size())) {
            if (!line.isBlank()) {
                rows.add(row(line));
            }
        }
        return new RouteMatrix(rows);
    }

    private static Row row(String line) {
        String[] cells = line.strip().split(",");
        if (cells.length != COLUMNS.size() + 2) {
            throw new AssertionError(FILE + ": not nine cells in " + line);
        }
        Map<Optional<Role>, Boolean> allowed = new LinkedHashMap<>();
        for (int i = 0; i < COLUMNS.size(); i++) {
            allowed.put(
                    COLUMNS.get(i),
                    switch (cells[i + 2].strip().toLowerCase(Locale.ROOT)) {
                        case "allow" -> true;
                        case "deny" -> false;
                        default -> throw new AssertionError(FILE + ": neither allow nor deny in " + line);
                    });
        }
        return new Row(new Route(HttpMethod.valueOf(cells[0].strip()), cells[1].strip()), allowed);
    }

    /** A method and a pattern as the handler mapping writes it. */
    record Route(HttpMethod method, String pattern) {

        @Override
        public String toString() {
            return method + " " + pattern;
        }
    }

    /** A route, and for nobody and each role whether it stands open. */
    record Row(Route route, Map<Optional<Role>, Boolean> allowed) {}
}
