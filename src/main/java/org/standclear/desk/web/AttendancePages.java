package org.standclear.desk.web;

import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
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

    /** One student of the course. */
    record Line(String section, String name, int turns, int checkedIn, int released, int counted, String minimum) {}

    @GetMapping("/attendance/{course}")
    String show(@PathVariable CourseId course, @AuthenticationPrincipal SignedInPerson me, Model model) {
        Course found = found(course);
        looks.lookedAtMany(me.id(), Sight.ATTENDANCE, course.toString());
        Map<String, List<Turn>> byStudent = new LinkedHashMap<>();
        rows.of(course, clock.instant())
                .forEach(turn -> byStudent
                        .computeIfAbsent(turn.section() + " " + turn.login(), key -> new ArrayList<>())
                        .add(turn));
        List<Line> lines =
                byStudent.values().stream().map(AttendancePages::line).toList();
        long met = lines.stream()
                .filter(line -> !line.minimum().isEmpty() && line.counted() >= Integer.parseInt(line.minimum()))
                .count();
        model.addAttribute("course", found);
        model.addAttribute("lines", lines);
        model.addAttribute(
                "headline",
                lines.isEmpty()
                        ? "Nobody of " + found.code() + " has had a turn yet"
                        : met + " of " + lines.size() + " students of " + found.code() + " have the runs they need");
        return "desk/attendance";
    }

    private static Line line(List<Turn> turns) {
        Turn first = turns.get(0);
        int minimum = turns.stream().mapToInt(Turn::minimumRuns).max().orElse(0);
        return new Line(
                first.section(),
                first.name(),
                turns.size(),
                (int) turns.stream().filter(turn -> turn.checkedInAt() != null).count(),
                (int) turns.stream().filter(turn -> turn.releasedAt() != null).count(),
                (int) turns.stream().filter(Turn::counts).count(),
                minimum == 0 ? "" : String.valueOf(minimum));
    }

    @GetMapping("/attendance/{course}/turns.csv")
    void csv(@PathVariable CourseId course, @AuthenticationPrincipal SignedInPerson me, HttpServletResponse response)
            throws IOException {
        Course found = found(course);
        looks.lookedAtMany(me.id(), Sight.ATTENDANCE, course.toString());
        response.setContentType("text/csv");
        response.setCharacterEncoding(StandardCharsets.UTF_8.name());
        response.setHeader("Content-Disposition", "attachment; filename=\"attendance.csv\"");
        PrintWriter out = response.getWriter();
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
            for (Turn turn : rows.of(course, clock.instant())) {
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
