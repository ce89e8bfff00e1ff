package org.standclear.desk.web;

import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.io.PrintWriter;
import java.time.Clock;
import java.time.Instant;
import java.util.List;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpMethod;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Component;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.standclear.desk.AttendanceRows;
import org.standclear.desk.AttendanceRows.Turn;
import org.standclear.people.Course;
import org.standclear.people.Courses;
import org.standclear.people.People;
import org.standclear.platform.access.AccessLog;
import org.standclear.platform.access.Sight;
import org.standclear.platform.ids.CourseId;
import org.standclear.platform.security.Role;
import org.standclear.platform.security.RouteRule;
import org.standclear.platform.security.RouteRules;
import org.standclear.platform.security.SignedInPerson;
import org.standclear.platform.text.TableCell;
import org.standclear.platform.time.LabTime;
import org.standclear.platform.web.NotFoundException;
import org.standclear.platform.web.TableFile;
import org.standclear.run.Evidence;

/** Attendance of a course, for the people who grade it, and the same as CSV. */
@Controller
class AttendancePages {

    private final AttendanceRows rows;
    private final Courses courses;
    private final Evidence evidence;
    private final People people;
    private final LabTime labTime;
    private final Clock clock;
    private final AccessLog looks;

    AttendancePages(
            AttendanceRows rows,
            Courses courses,
            Evidence evidence,
            People people,
            LabTime labTime,
            Clock clock,
            AccessLog looks) {
        this.rows = rows;
        this.courses = courses;
        this.evidence = evidence;
        this.people = people;
        this.labTime = labTime;
        this.clock = clock;
        this.looks = looks;
    }

    /** Who may read it: who teaches, and who prepares the bench. */
    @Component
    static class Rules implements RouteRules {
        @Override
        public List<RouteRule> rules() {
            return List.of(
                    RouteRule.roles(HttpMethod.GET, "/attendance/{course}", Role.INSTRUCTOR),
                    RouteRule.roles(HttpMethod.GET, "/attendance/{course}/turns.csv", Role.INSTRUCTOR),
                    RouteRule.roles(HttpMethod.GET, "/attendance/{course}/evidence.csv", Role.INSTRUCTOR));
        }
    }

    @GetMapping("/attendance/{course}")
    String show(@PathVariable CourseId course, @AuthenticationPrincipal SignedInPerson me, Model model) {
        Course found = found(course);
        looks.lookedAtMany(me.id(), Sight.ATTENDANCE, course.toString());
        List<AttendanceLine> lines =
                AttendanceLine.of(rows.students(course), rows.asked(course), rows.of(course, clock.instant()));
        model.addAttribute("course", found);
        model.addAttribute("lines", lines);
        model.addAttribute("headline", headline(found, lines));
        model.addAttribute(
                "severalSections",
                lines.stream().map(AttendanceLine::login).distinct().count() < lines.size());
        return "desk/attendance";
    }

    private static String headline(Course course, List<AttendanceLine> lines) {
        var asked = AttendanceLine.asked(lines);
        if (lines.isEmpty()) {
            return "Nobody takes " + course.code() + " yet";
        }
        if (asked.isEmpty()) {
            return "No assignment of " + course.code() + " asks for runs";
        }
        long met = asked.stream()
                .filter(own -> own.stream().allMatch(AttendanceLine::isMet))
                .count();
        return met + " of " + asked.size() + " students of " + course.code() + " have the runs they need";
    }

    @GetMapping("/attendance/{course}/turns.csv")
    void csv(@PathVariable CourseId course, @AuthenticationPrincipal SignedInPerson me, HttpServletResponse response)
            throws IOException {
        Course found = found(course);
        looks.lookedAtMany(me.id(), Sight.ATTENDANCE, course.toString());
        PrintWriter out = TableFile.begin(response, "attendance.csv");
        try (CSVPrinter csv = new CSVPrinter(out, CSVFormat.RFC4180)) {
            csv.printRecord(
                    "course",
                    "section",
                    "student",
                    "sign-in name",
                    "assignment",
                    "cell",
                    "slot",
                    "state",
                    "checked in",
                    "released",
                    "released by",
                    "run started",
                    "closed out",
                    "counts");
            for (Turn turn : AttendanceRows.once(rows.of(course, clock.instant()))) {
                csv.printRecord(
                        TableCell.plain(found.code()),
                        TableCell.plain(turn.section()),
                        TableCell.plain(turn.name()),
                        TableCell.plain(turn.login()),
                        TableCell.plain(turn.assignment()),
                        TableCell.plain(turn.cell()),
                        iso(turn.start()),
                        turn.state().words(),
                        iso(turn.checkedInAt()),
                        iso(turn.releasedAt()),
                        TableCell.plain(turn.releasedBy()),
                        iso(turn.startedAt()),
                        iso(turn.closedOutAt()),
                        turn.counts() ? "yes" : "no");
            }
        }
    }

    /** What runs are linked to and what is confirmed, a line for each link. */
    @GetMapping("/attendance/{course}/evidence.csv")
    void evidence(
            @PathVariable CourseId course, @AuthenticationPrincipal SignedInPerson me, HttpServletResponse response)
            throws IOException {
        Course found = found(course);
        looks.lookedAtMany(me.id(), Sight.ATTENDANCE, course.toString());
        new EvidenceSheet(found, people, labTime).write(evidence.ofCourse(course), response);
    }

    private Course found(CourseId course) {
        return courses.find(course).orElseThrow(() -> new NotFoundException("course"));
    }

    private String iso(@Nullable Instant at) {
        return at == null ? "" : labTime.iso(at);
    }
}
