package org.standclear.report.web;

import java.io.IOException;
import org.apache.commons.csv.CSVPrinter;
import org.standclear.platform.text.TableCell;

/** The term report as rows: part, what, and its values. */
final class TermTable {

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

    private static void row(CSVPrinter csv, String part, String words) {
        try {
            csv.printRecord(part, TableCell.plain(words), "", "", "", "", "", "");
        } catch (IOException broken) {
            throw new java.io.UncheckedIOException(broken);
        }
    }
}
