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
import java.util.stream.Stream;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.standclear.people.RosterImports;

/** One CSV file as lines of named cells; names in small letters, cells without blanks around them. */
record CsvTable(List<Line> lines) {

    /** The widest table of such a set has some 30. */
    private static final int MOST_COLUMNS = 60;

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

    /**
     * Reads the needed columns, and those of the others that somebody asks for; throws with one clear line when it is no
     * table, too long or too wide, or lacks a column. Whatever else a line has is not kept: a file of many lines and many
     * columns would fill the memory.
     */
    static CsvTable of(String name, byte[] file, List<String> needed, String... others) {
        try (CSVParser parser = CSVParser.parse(new StringReader(text(name, file)), format())) {
            Map<String, String> columns = columns(name, parser.getHeaderNames(), needed, others);
            List<Line> lines = new ArrayList<>();
            for (CSVRecord one : parser) {
                if (lines.size() >= RosterImports.MOST_LINES) {
                    throw new RosterException(name + " has more than 50,000 lines. Send one school at a time.");
                }
                Map<String, String> cells = new HashMap<>();
                columns.forEach((plain, column) ->
                        cells.put(plain, one.isSet(column) ? one.get(column).strip() : ""));
                lines.add(new Line((int) parser.getCurrentLineNumber(), cells));
            }
            return new CsvTable(lines);
        } catch (IOException | UncheckedIOException | IllegalStateException | IllegalArgumentException broken) {
            throw new RosterException(name + " is not a CSV table: " + broken.getMessage());
        }
    }

    /** The columns that are kept: how the header spells them, by their names in small letters. */
    private static Map<String, String> columns(
            String name, List<String> header, List<String> needed, String... others) {
        requireNarrow(name, header);
        Map<String, String> spelled = new HashMap<>();
        header.forEach(column -> spelled.put(column.strip().toLowerCase(Locale.ROOT), column));
        List<String> missing = needed.stream()
                .filter(column -> !spelled.containsKey(column.toLowerCase(Locale.ROOT)))
                .toList();
        if (!missing.isEmpty()) {
            throw new RosterException(name + " has no column " + String.join(", ", missing) + ".");
        }
        Set<String> kept = Stream.concat(needed.stream(), Stream.concat(Arrays.stream(others), Stream.of("status")))
                .map(column -> column.toLowerCase(Locale.ROOT))
                .collect(Collectors.toSet());
        spelled.keySet().retainAll(kept);
        return spelled;
    }

    /** Throws when the header has more columns than any roster needs. */
    static void requireNarrow(String name, List<String> header) {
        if (header.size() > MOST_COLUMNS) {
            throw new RosterException(name + " has " + header.size() + " columns; a roster has " + MOST_COLUMNS
                    + " at most. Leave out those that are not needed.");
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
