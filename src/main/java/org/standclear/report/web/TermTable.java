package org.standclear.report.web;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.apache.commons.csv.CSVPrinter;
import org.standclear.platform.text.TableCell;

/** The term report as rows: part, what, and its values. */
final class TermTable {

    private static final int COLUMNS = 8;

    private TermTable() {}

    static void write(TermView view, CSVPrinter csv) throws IOException {
        csv.printRecord("part", "what", "value", "95 % limits", "per 1000 starts, 95 %", "term before", "p", "says");
        for (TermView.Fact fact : view.exposure()) {
            csv.printRecord("exposure", fact.name(), fact.value(), "", "", "", "", "");
        }
        for (int i = 0; i < view.counts().size(); i++) {
            TermView.CountLine line = view.counts().get(i);
            TermView.ComparedLine compared = view.compared().get(i);
            csv.printRecord(
                    "count",
                    line.words(),
                    line.events(),
                    line.limits(),
                    line.rate(),
                    compared.then(),
                    compared.p(),
                    compared.says());
        }
        csv.printRecord("runs between", view.between(), "", "", "", "", "", "");
        view.cells().forEach(cell -> row(csv, "cell", String.join("; ", cell)));
        view.upkeep().duties().forEach(one -> row(csv, "inspection or review", one.values()));
        view.upkeep().tags().forEach(one -> row(csv, "restriction, hold or tag", one));
        view.upkeep().waivers().forEach(one -> row(csv, "waivers", one));
        for (TermView.Fact fact : view.upkeep().makeUps()) {
            csv.printRecord("make-ups", fact.name(), fact.value(), "", "", "", "", "");
        }
        view.authorisations().forEach(one -> row(csv, "authorisations", String.join("; ", one)));
        for (TermView.ActionLine action : view.actions()) {
            csv.printRecord(
                    "action",
                    TableCell.plain(action.words()),
                    action.state(),
                    action.due(),
                    action.level(),
                    action.incident(),
                    "",
                    TableCell.plain(action.owner()));
        }
        for (TermView.Fact fact : view.fairness()) {
            csv.printRecord("fairness", fact.name(), fact.value(), "", "", "", "", "");
        }
    }

    /** As many values as there are, in the columns after the part. */
    private static void row(CSVPrinter csv, String part, List<String> values) {
        List<String> row = new ArrayList<>(List.of(part));
        values.forEach(value -> row.add(TableCell.plain(value)));
        while (row.size() < COLUMNS) {
            row.add("");
        }
        try {
            csv.printRecord(row);
        } catch (IOException broken) {
            throw new java.io.UncheckedIOException(broken);
        }
    }

    private static void row(CSVPrinter csv, String part, String words) {
        try {
            csv.printRecord(part, TableCell.plain(words), "", "", "", "", "", "");
        } catch (IOException broken) {
            throw new java.io.UncheckedIOException(broken);
        }
    }
}
