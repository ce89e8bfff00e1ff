package org.standclear.people.roster;

import java.io.IOException;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.standclear.people.RosterImports;

/** One CSV file as lines of named cells; names in small letters, cells without blanks around them. */
record CsvTable(List<Line> lines) {

    CsvTable {
        lines = List.copyOf(lines);
    }

    /** A line with its number in the file. */
    record Line(int number, Map<String, String> cells) {

        String cell(String name) {
            return cells.getOrDefault(name.toLowerCase(Locale.ROOT), "");
        }

        /** OneRoster's mark for what the sender has deleted. */
        boolean isToBeDeleted() {
            return cell("status").equalsIgnoreCase("tobedeleted");
        }
    }

    /** Reads it; throws with one clear line when it is no table, too long, or lacks a column. */
    static CsvTable of(String name, byte[] file, String... needed) {
        try (CSVParser parser = CSVParser.parse(new StringReader(text(name, file)), format())) {
            List<String> header = parser.getHeaderNames();
            Set<String> columns = header.stream()
                    .map(column -> column.strip().toLowerCase(Locale.ROOT))
                    .collect(Collectors.toSet());
            List<String> missing = Arrays.stream(needed)
                    .filter(column -> !columns.contains(column.toLowerCase(Locale.ROOT)))
                    .toList();
            if (!missing.isEmpty()) {
                throw new RosterException(name + " has no column " + String.join(", ", missing) + ".");
            }
            List<Line> lines = new ArrayList<>();
            for (CSVRecord one : parser) {
                if (lines.size() >= RosterImports.MOST_LINES) {
                    throw new RosterException(name + " has more than 50,000 lines. Send one school at a time.");
                }
                Map<String, String> cells = new HashMap<>();
                header.forEach(column -> cells.put(
                        column.strip().toLowerCase(Locale.ROOT),
                        one.isSet(column) ? one.get(column).strip() : ""));
                lines.add(new Line((int) parser.getCurrentLineNumber(), cells));
            }
            return new CsvTable(lines);
        } catch (IOException | UncheckedIOException | IllegalStateException | IllegalArgumentException broken) {
            throw new RosterException(name + " is not a CSV table: " + broken.getMessage());
        }
    }

    private static String text(String name, byte[] file) {
        try {
            return RosterText.of(file);
        } catch (RosterException unreadable) {
            throw new RosterException(name + ": " + unreadable.getMessage());
        }
    }

    private static CSVFormat format() {
        return CSVFormat.DEFAULT
                .builder()
                .setHeader()
                .setSkipHeaderRecord(true)
                .setIgnoreEmptyLines(true)
                .setAllowMissingColumnNames(true)
                .get();
    }
}
