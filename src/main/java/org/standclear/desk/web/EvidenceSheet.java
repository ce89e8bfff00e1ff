package org.standclear.desk.web;

import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.time.Instant;
import java.util.List;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;
import org.jspecify.annotations.Nullable;
import org.standclear.people.Course;
import org.standclear.people.People;
import org.standclear.platform.text.TableCell;
import org.standclear.platform.time.LabTime;
import org.standclear.platform.web.TableFile;
import org.standclear.run.Evidence;
import org.standclear.run.Evidence.Graded;

/** The grading evidence of a course as CSV: a line for each link of a run to a criterion. */
record EvidenceSheet(Course course, People people, LabTime labTime) {

    private static final Object[] HEAD = {
        "course",
        "section",
        "student",
        "sign-in name",
        "assignment",
        "criterion",
        "points",
        "cell",
        "run started",
        "run ended",
        "how it ended",
        "passes",
        "stops",
        "closed out",
        "anything odd",
        "e-stop attendant",
        "program sha-256",
        "linked by",
        "linked at",
        "confirmed by",
        "confirmed at"
    };

    void write(List<Graded> graded, HttpServletResponse response) throws IOException {
        try (CSVPrinter csv = new CSVPrinter(TableFile.begin(response, "evidence.csv"), CSVFormat.RFC4180)) {
            csv.printRecord(HEAD);
            for (Graded one : graded) {
                csv.printRecord(line(one));
            }
        }
    }

    private Object[] line(Graded one) {
        Evidence.Link link = one.link();
        Evidence.Outcome outcome = one.outcome();
        Integer points = link.criterion().points();
        return new Object[] {
            TableCell.plain(course.code()),
            TableCell.plain(one.section()),
            TableCell.plain(one.name()),
            TableCell.plain(one.login()),
            TableCell.plain(one.assignment()),
            TableCell.plain(link.criterion().words()),
            points == null ? "" : points,
            TableCell.plain(one.cell()),
            iso(one.startedAt()),
            iso(outcome.endedAt()),
            outcome.state().words(),
            outcome.passes(),
            outcome.stops(),
            iso(one.closedOutAt()),
            outcome.odd() == null ? "" : outcome.odd(),
            TableCell.plain(outcome.attendantNames()),
            outcome.fingerprint(),
            TableCell.plain(people.printedName(link.linkedBy())),
            iso(link.linkedAt()),
            link.confirmedBy() == null ? "" : TableCell.plain(people.printedName(link.confirmedBy())),
            iso(link.confirmedAt())
        };
    }

    private String iso(@Nullable Instant at) {
        return at == null ? "" : labTime.iso(at);
    }
}
