package org.standclear.report.web;

import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.time.Instant;
import java.util.List;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpHeaders;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.standclear.platform.lab.LabScope;
import org.standclear.platform.security.SignedInPerson;
import org.standclear.platform.text.TableCell;
import org.standclear.platform.time.LabTime;
import org.standclear.platform.web.TableFile;
import org.standclear.report.OwnRecords;
import org.standclear.report.OwnRecords.Answer;
import org.standclear.report.OwnRecords.Question;
import org.standclear.report.OwnRecords.Section;

/** A person's own record as a file to take away. */
@Controller
class OwnRecordFiles {

    private final OwnRecords records;
    private final LabTime labTime;

    OwnRecordFiles(OwnRecords records, LabTime labTime) {
        this.records = records;
        this.labTime = labTime;
    }

    /** The whole file; instants as ISO 8601 in the lab's zone. */
    record RecordFile(String person, String madeAt, List<PartOfFile> parts, List<QuestionInFile> questions) {}

    /** One part of the record. */
    record PartOfFile(String title, List<LineOfFile> entries) {}

    /** One line of it. */
    record LineOfFile(String at, String words) {}

    /** A question; the answer's fields are null while there is none. */
    record QuestionInFile(
            String at,
            String about,
            String words,
            @Nullable String answeredAt,
            @Nullable String answer) {}

    @GetMapping(path = "/me/record.json")
    ResponseEntity<RecordFile> json(@AuthenticationPrincipal SignedInPerson me) {
        List<PartOfFile> parts = records.whole(me.id()).stream()
                .map(section -> new PartOfFile(
                        section.title(),
                        section.entries().stream()
                                .map(entry -> new LineOfFile(iso(entry), entry.words()))
                                .toList()))
                .toList();
        List<QuestionInFile> questions =
                records.questionsOf(me.id()).stream().map(this::inFile).toList();
        return ResponseEntity.ok()
                .header(HttpHeaders.CONTENT_DISPOSITION, "attachment; filename=\"my-record.json\"")
                .contentType(MediaType.APPLICATION_JSON)
                .body(new RecordFile(me.printedName(), labTime.iso(labTime.now()), parts, questions));
    }

    private QuestionInFile inFile(Question question) {
        Answer answer = question.answer();
        return new QuestionInFile(
                labTime.iso(question.askedAt()),
                question.about(),
                question.words(),
                answer == null ? null : labTime.iso(answer.at()),
                answer == null ? null : answer.words());
    }

    @GetMapping("/me/record.csv")
    void csv(@AuthenticationPrincipal SignedInPerson me, HttpServletResponse response) throws IOException {
        try (CSVPrinter csv = new CSVPrinter(TableFile.begin(response, "my-record.csv"), CSVFormat.RFC4180)) {
            csv.printRecord("part", "at", "words");
            for (Section section : records.whole(me.id())) {
                for (OwnRecords.Entry entry : section.entries()) {
                    csv.printRecord(section.title(), iso(entry), TableCell.plain(entry.words()));
                }
            }
            for (Question question : records.questionsOf(me.id())) {
                line(csv, "Question", question.askedAt(), question.about() + " | " + question.words());
                Answer answer = question.answer();
                if (answer != null) {
                    line(csv, "Answer", answer.at(), answer.words());
                }
            }
        }
    }

    /** By the clock of the lab that it is of. */
    private String iso(OwnRecords.Entry entry) {
        return LabScope.in(entry.lab(), () -> labTime.iso(entry.at()));
    }

    private void line(CSVPrinter csv, String part, Instant at, String words) throws IOException {
        csv.printRecord(part, labTime.iso(at), TableCell.plain(words));
    }
}
