package org.standclear.trail.web;

import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.UncheckedIOException;
import java.util.HashMap;
import java.util.Map;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.lab.Lab;
import org.standclear.platform.lab.Labs;
import org.standclear.platform.security.PrintedNames;
import org.standclear.platform.text.TableCell;
import org.standclear.platform.time.LabTime;
import org.standclear.platform.web.TableFile;
import org.standclear.trail.RecordLines;
import org.standclear.trail.RecordedEntry;
import org.standclear.trail.TrailFilter;
import org.standclear.trail.TrailReader;

/** Hands the record out: as CSV to read in a table, as JSON lines to recompute the chain from. */
@Controller
class RecordExport {

    private final TrailReader reader;
    private final Labs labs;
    private final PrintedNames names;
    private final LabTime labTime;

    RecordExport(TrailReader reader, Labs labs, PrintedNames names, LabTime labTime) {
        this.reader = reader;
        this.labs = labs;
        this.names = names;
        this.labTime = labTime;
    }

    @GetMapping("/record/entries.csv")
    void csv(@RequestParam Map<String, String> parameters, HttpServletResponse response) throws IOException {
        try (CSVPrinter csv = new CSVPrinter(TableFile.begin(response, "record.csv"), CSVFormat.RFC4180)) {
            csv.printRecord("entry", "at", "what", "who", "kind", "subject", "facts", "previous hash", "hash");
            Map<PersonId, String> known = new HashMap<>();
            reader.each(
                    filter(parameters),
                    entry -> write(
                            entry, entry.actor() == null ? "" : known.computeIfAbsent(entry.actor(), names::of), csv));
        }
    }

    @GetMapping("/record/entries.jsonl")
    void jsonLines(@RequestParam Map<String, String> parameters, HttpServletResponse response) throws IOException {
        PrintWriter out = attachment(response, "application/jsonl", "record.jsonl");
        reader.each(filter(parameters), entry -> out.write(RecordLines.json(entry) + "\n"));
    }

    private TrailFilter filter(Map<String, String> parameters) {
        Lab lab = labs.theLab();
        return RecordFilterForm.of(parameters).filter(lab.id(), lab.zone());
    }

    private void write(RecordedEntry entry, String who, CSVPrinter csv) {
        try {
            csv.printRecord(
                    entry.sequence(),
                    labTime.iso(entry.at()),
                    TableCell.plain(entry.words()),
                    TableCell.plain(who),
                    TableCell.plain(entry.kind()),
                    TableCell.plain(entry.subject()),
                    TableCell.plain(entry.factsText()),
                    entry.previousHash(),
                    entry.hash());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static PrintWriter attachment(HttpServletResponse response, String type, String name) throws IOException {
        response.setContentType(type);
        response.setCharacterEncoding("UTF-8");
        response.setHeader("Content-Disposition", "attachment; filename=\"" + name + "\"");
        return response.getWriter();
    }
}
