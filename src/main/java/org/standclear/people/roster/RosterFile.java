package org.standclear.people.roster;

import java.io.IOException;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.standclear.people.RosterImports;

/**
 * Reads the columns of a roster: our own, or those that OneRoster names in its CSV files (username, givenName, familyName,
 * email, courseCode, classCode, role, status), joined into one table.
 */
final class RosterFile {

    /** The columns by the names they may have, in small letters. */
    private static final Map<String, List<String>> COLUMNS = Map.of(
            "login", List.of("login", "username"),
            "name", List.of("name", "printed name"),
            "given", List.of("givenname"),
            "family", List.of("familyname"),
            "address", List.of("email", "e-mail"),
            "course", List.of("course", "coursecode"),
            "section", List.of("section", "classcode"),
            "team", List.of("team", "pair"),
            "role", List.of("role"),
            "status", List.of("status"));

    private final List<RosterRow> rows = new ArrayList<>();
    private final RosterProblems problems = new RosterProblems();
    private int skipped;

    private RosterFile() {}

    static RosterFile of(String text) {
        RosterFile file = new RosterFile();
        file.read(text);
        return file;
    }

    List<RosterRow> rows() {
        return List.copyOf(rows);
    }

    /** A sentence for each thing that is wrong; empty when the file can be used. */
    List<String> problems() {
        return problems.says();
    }

    /** Lines about others than students, and about students who leave. */
    int skipped() {
        return skipped;
    }

    private void read(String text) {
        String header = text.lines().filter(line -> !line.isBlank()).findFirst().orElse("");
        CSVFormat format = CSVFormat.DEFAULT
                .builder()
                .setDelimiter(delimiter(header))
                .setHeader()
                .setSkipHeaderRecord(true)
                .setIgnoreEmptyLines(true)
                .setAllowMissingColumnNames(true)
                .get();
        try (CSVParser parser = CSVParser.parse(new StringReader(text), format)) {
            CsvTable.requireNarrow("The file", parser.getHeaderNames());
            Map<String, String> columns = columns(parser.getHeaderNames());
            if (!problems.says().isEmpty()) {
                return;
            }
            for (CSVRecord one : parser) {
                if (one.getRecordNumber() > RosterImports.MOST_LINES) {
                    problems.add("The file has more than 50,000 lines. Send one course at a time.");
                    return;
                }
                row(one, columns, (int) parser.getCurrentLineNumber());
            }
            if (rows.isEmpty() && problems.says().isEmpty()) {
                problems.add("The file names no student.");
            }
        } catch (RosterException tooWide) {
            problems.add(String.valueOf(tooWide.getMessage()));
        } catch (IOException | UncheckedIOException | IllegalStateException | IllegalArgumentException broken) {
            problems.add("The file is not a CSV table: " + broken.getMessage());
        }
    }

    /** The one that the header has most of. */
    private static char delimiter(String header) {
        char best = ',';
        long most = -1;
        for (char one : new char[] {',', ';', '\t'}) {
            long count = header.chars().filter(c -> c == one).count();
            if (count > most) {
                most = count;
                best = one;
            }
        }
        return best;
    }

    private Map<String, String> columns(List<String> header) {
        Map<String, String> found = new HashMap<>();
        for (String name : header) {
            String plain = name.strip().toLowerCase(Locale.ROOT);
            COLUMNS.forEach((column, names) -> {
                if (names.contains(plain)) {
                    found.put(column, name);
                }
            });
        }
        List<String> missing = new ArrayList<>();
        missing(found, missing, "login", "login (or username)");
        if (!found.containsKey("name") && !(found.containsKey("given") && found.containsKey("family"))) {
            missing.add("name (or givenName and familyName)");
        }
        missing(found, missing, "section", "section (or classCode)");
        if (!missing.isEmpty()) {
            problems.add(
                    "The first line has to name the columns; these are missing: " + String.join(", ", missing) + ".");
        }
        return found;
    }

    private static void missing(Map<String, String> found, List<String> missing, String column, String words) {
        if (!found.containsKey(column)) {
            missing.add(words);
        }
    }

    private void row(CSVRecord one, Map<String, String> columns, int line) {
        Map<String, String> values = new TreeMap<>();
        columns.forEach((column, name) ->
                values.put(column, one.isSet(name) ? one.get(name).strip() : ""));
        String role = values.getOrDefault("role", "").toLowerCase(Locale.ROOT);
        if (!role.isEmpty() && !role.equals("student")
                || values.getOrDefault("status", "").equalsIgnoreCase("tobedeleted")) {
            skipped++;
            return;
        }
        String name = Optional.ofNullable(values.get("name"))
                .filter(given -> !given.isEmpty())
                .orElse((values.getOrDefault("given", "") + " " + values.getOrDefault("family", "")).strip());
        String course = values.getOrDefault("course", "");
        String section = values.getOrDefault("section", "");
        int dash = section.lastIndexOf('-');
        if (course.isEmpty() && dash > 0) {
            course = section.substring(0, dash);
            section = section.substring(dash + 1);
        } else if (!course.isEmpty() && section.startsWith(course + "-")) {
            section = section.substring(course.length() + 1);
        }
        RosterRow row = new RosterRow(
                line,
                values.getOrDefault("login", "").toLowerCase(Locale.ROOT),
                name,
                values.getOrDefault("address", ""),
                course,
                section,
                values.getOrDefault("team", ""));
        if (problems.allow(row)) {
            rows.add(row);
        }
    }
}
