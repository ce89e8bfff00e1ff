package org.standclear.commandline;

import static org.standclear.core.quantity.ShownNumber.up;

import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.stream.Stream;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;
import org.jspecify.annotations.Nullable;
import org.standclear.platform.text.TableCell;

/** The answers for a folder, as a table for the screen and as CSV for a spreadsheet. */
final class HomeworkTable {

    private static final String[] HEADER = {
        "file",
        "answer",
        "check",
        "line",
        "why",
        "title",
        "reader",
        "lines-understood",
        "lines-total",
        "cycle-time-s",
        "held-tool-peak-mm-s",
        "held-fastest-part-mm-s",
        "cautions",
        "sha256"
    };

    private HomeworkTable() {}

    static String text(List<HomeworkRow> rows) {
        StringBuilder text = new StringBuilder();
        int width = Math.min(
                50, rows.stream().mapToInt(row -> row.file().length()).max().orElse(0));
        String form = "%-" + Math.max(4, width) + "s  %-13s  %9s  %9s  %5s  %s";
        line(text, form, "file", "answer", "seconds", "tool mm/s", "line", "why");
        for (HomeworkRow row : rows) {
            line(
                    text,
                    form,
                    printable(row.file()),
                    row.answer(),
                    shown(row.cycleS(), 2),
                    shown(row.toolPeakMmS(), 1),
                    row.line() == null ? "" : row.line().toString(),
                    (row.check() == null ? "" : row.check() + ": ") + row.why());
        }
        String counts = Stream.of("within", "outside", "not-checkable", "unreadable")
                .map(word -> rows.stream().filter(row -> row.has(word)).count() + " " + word)
                .reduce((a, b) -> a + ", " + b)
                .orElse("");
        return text.append(System.lineSeparator())
                .append(rows.size())
                .append(" files: ")
                .append(counts)
                .append(System.lineSeparator())
                .toString();
    }

    private static void line(StringBuilder text, String form, Object... cells) {
        text.append(String.format(form, cells).stripTrailing()).append(System.lineSeparator());
    }

    /** File names are anybody's: none may steer a terminal. */
    private static String printable(String name) {
        return name.replaceAll("[\\p{Cntrl}\\p{Cf}]", "?");
    }

    private static String shown(@Nullable Double value, int decimals) {
        return value == null ? "" : up(value, decimals);
    }

    static String csv(List<HomeworkRow> rows) {
        CSVFormat format = CSVFormat.RFC4180.builder().setHeader(HEADER).get();
        try (StringWriter text = new StringWriter();
                CSVPrinter printer = new CSVPrinter(text, format)) {
            for (HomeworkRow row : rows) {
                printer.printRecord(cells(row));
            }
            return text.toString();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static List<String> cells(HomeworkRow row) {
        return Stream.of(
                        row.file(),
                        row.answer(),
                        row.check(),
                        row.line(),
                        row.why(),
                        row.title(),
                        row.reader(),
                        row.linesUnderstood(),
                        row.linesTotal(),
                        row.cycleS(),
                        row.toolPeakMmS(),
                        row.fastestMmS(),
                        row.cautions(),
                        row.sha256())
                .map(cell -> cell == null ? "" : TableCell.plain(cell.toString()))
                .toList();
    }
}
