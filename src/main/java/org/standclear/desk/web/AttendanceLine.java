package org.standclear.desk.web;

import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.standclear.desk.AttendanceRows.Asked;
import org.standclear.desk.AttendanceRows.Student;
import org.standclear.desk.AttendanceRows.Turn;

/**
 * One student of a course, also one who never came.
 *
 * @param needs each assignment of the section with the runs that count and those it asks for
 */
record AttendanceLine(
        String section,
        String login,
        String name,
        int turns,
        int checkedIn,
        int released,
        int counted,
        List<Need> needs) {

    AttendanceLine {
        needs = List.copyOf(needs);
    }

    /** An assignment, and how far the student is. */
    record Need(String assignment, int counted, int minimum) {

        boolean isMet() {
            return counted >= minimum;
        }

        /** "Peg and plate 2 of 3". */
        String words() {
            return assignment + " " + counted + " of " + minimum;
        }
    }

    boolean isAsked() {
        return !needs.isEmpty();
    }

    boolean isMet() {
        return needs.stream().allMatch(Need::isMet);
    }

    /** Each student's lines, of whom some section asks for runs; somebody in two sections is one student. */
    static Collection<List<AttendanceLine>> asked(List<AttendanceLine> lines) {
        return lines.stream()
                .filter(AttendanceLine::isAsked)
                .collect(Collectors.groupingBy(AttendanceLine::login))
                .values();
    }

    /** How far the student is, in words. */
    public String needed() {
        return needs.stream().map(Need::words).collect(Collectors.joining(", "));
    }

    /** Everybody who is enrolled by section and name, then who had turns and is enrolled no more. */
    static List<AttendanceLine> of(List<Student> students, List<Asked> asked, List<Turn> turns) {
        Map<Student, List<Turn>> each = new LinkedHashMap<>();
        students.forEach(student -> each.put(student, new ArrayList<>()));
        turns.forEach(turn -> each.computeIfAbsent(
                        new Student(turn.section(), turn.login(), turn.name()), key -> new ArrayList<>())
                .add(turn));
        List<AttendanceLine> lines = new ArrayList<>();
        each.forEach((student, own) -> lines.add(line(student, asked, own)));
        return lines;
    }

    private static AttendanceLine line(Student student, List<Asked> asked, List<Turn> turns) {
        List<Need> needs = asked.stream()
                .filter(one -> one.section().equals(student.section()))
                .map(one -> new Need(
                        one.assignment(),
                        (int) turns.stream()
                                .filter(turn ->
                                        turn.counts() && one.assignment().equals(turn.assignment()))
                                .count(),
                        one.minimumRuns()))
                .toList();
        return new AttendanceLine(
                student.section(),
                student.login(),
                student.name(),
                turns.size(),
                (int) turns.stream().filter(turn -> turn.checkedInAt() != null).count(),
                (int) turns.stream().filter(turn -> turn.releasedAt() != null).count(),
                (int) turns.stream().filter(Turn::counts).count(),
                needs);
    }
}
