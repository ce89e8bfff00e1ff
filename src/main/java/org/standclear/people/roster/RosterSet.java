package org.standclear.people.roster;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.standclear.people.roster.CsvTable.Line;

/**
 * Joins a set of files to one roster: users, classes, courses and enrollments under the file and column names of the open
 * OneRoster CSV tables (versions 1.1 and 1.2; names from memory of the published tables). Other files of such a set, as
 * orgs, academicSessions or manifest, are not needed and left aside.
 */
final class RosterSet {

    private static final String USERS = "users.csv";
    private static final String CLASSES = "classes.csv";
    private static final String COURSES = "courses.csv";
    private static final String ENROLLMENTS = "enrollments.csv";

    private final List<RosterRow> rows = new ArrayList<>();
    private final RosterProblems problems = new RosterProblems();

    private RosterSet() {}

    /** Whether the names are those of such a set. */
    static boolean isOne(Set<String> names) {
        return names.contains(ENROLLMENTS) || (names.contains(USERS) && names.contains(CLASSES));
    }

    static RosterSet of(Map<String, byte[]> files) {
        RosterSet set = new RosterSet();
        set.read(files);
        return set;
    }

    List<RosterRow> rows() {
        return List.copyOf(rows);
    }

    /** A sentence for each thing that is wrong; empty when the set can be used. */
    List<String> problems() {
        return problems.says().stream()
                .map(says -> says.startsWith("Line") ? ENROLLMENTS + ": " + says : says)
                .toList();
    }

    private void read(Map<String, byte[]> files) {
        List<String> missing = List.of(USERS, CLASSES, COURSES, ENROLLMENTS).stream()
                .filter(name -> !files.containsKey(name))
                .toList();
        if (!missing.isEmpty()) {
            problems.add("The set lacks " + String.join(", ", missing) + ".");
            return;
        }
        try {
            Map<String, Line> users = byId(
                    USERS, table(files, USERS, List.of("sourcedId", "username", "givenName", "familyName"), "email"));
            Map<String, Line> classes =
                    byId(CLASSES, table(files, CLASSES, List.of("sourcedId", "classCode", "courseSourcedId")));
            Map<String, Line> courses = byId(COURSES, table(files, COURSES, List.of("sourcedId", "courseCode")));
            for (Line one : table(files, ENROLLMENTS, List.of("classSourcedId", "userSourcedId", "role"))
                    .lines()) {
                if (!one.isToBeDeleted() && one.cell("role").equalsIgnoreCase("student")) {
                    enrolment(one, users, classes, courses);
                }
            }
        } catch (RosterException unreadable) {
            problems.add(String.valueOf(unreadable.getMessage()));
            return;
        }
        if (rows.isEmpty() && problems.says().isEmpty()) {
            problems.add(ENROLLMENTS + " names no student.");
        }
    }

    private static CsvTable table(Map<String, byte[]> files, String name, List<String> needed, String... others) {
        return CsvTable.of(name, Objects.requireNonNull(files.get(name)), needed, others);
    }

    private Map<String, Line> byId(String name, CsvTable table) {
        Map<String, Line> byId = new HashMap<>();
        for (Line one : table.lines()) {
            Line before = byId.putIfAbsent(one.cell("sourcedId"), one);
            if (before != null) {
                problems.add(name + ", lines " + before.number() + " and " + one.number() + ": the sourcedId \""
                        + one.cell("sourcedId") + "\" is there twice.");
            }
        }
        return byId;
    }

    private void enrolment(Line one, Map<String, Line> users, Map<String, Line> classes, Map<String, Line> courses) {
        Line user = found(one, "userSourcedId", users, USERS);
        Line taught = found(one, "classSourcedId", classes, CLASSES);
        if (user == null || taught == null || user.isToBeDeleted() || taught.isToBeDeleted()) {
            return;
        }
        Line course = courses.get(taught.cell("courseSourcedId"));
        if (course == null) {
            problems.add(CLASSES + ", line " + taught.number() + ": there is no course \""
                    + taught.cell("courseSourcedId") + "\" in " + COURSES + ".");
            return;
        }
        String code = course.cell("courseCode");
        String section = taught.cell("classCode");
        RosterRow row = new RosterRow(
                one.number(),
                user.cell("username").toLowerCase(Locale.ROOT),
                (user.cell("givenName") + " " + user.cell("familyName")).strip(),
                user.cell("email"),
                code,
                section.startsWith(code + "-") ? section.substring(code.length() + 1) : section,
                "");
        if (problems.allow(row)) {
            rows.add(row);
        }
    }

    private @Nullable Line found(Line one, String column, Map<String, Line> in, String name) {
        Line found = in.get(one.cell(column));
        if (found == null) {
            problems.add(ENROLLMENTS + ", line " + one.number() + ": there is no \"" + one.cell(column) + "\" in "
                    + name + ".");
        }
        return found;
    }
}
