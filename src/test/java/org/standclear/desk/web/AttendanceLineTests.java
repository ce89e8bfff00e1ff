package org.standclear.desk.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.standclear.booking.BookingState;
import org.standclear.desk.AttendanceRows;
import org.standclear.desk.AttendanceRows.Asked;
import org.standclear.desk.AttendanceRows.Student;
import org.standclear.desk.AttendanceRows.Turn;
import org.standclear.platform.ids.BookingId;

/** Who is listed, and when somebody has the runs that each assignment asks for. */
class AttendanceLineTests {

    private static final Student NOOR = new Student("01", "noor", "Noor Candlewick");
    private static final Student WREN = new Student("02", "wren", "Wren Saltmarsh");
    private static final List<Asked> ASKED =
            List.of(new Asked("01", "Peg and plate", 2), new Asked("01", "Sorting run", 1));

    private static Turn turn(Student student, @Nullable String assignment, boolean ran) {
        Instant at = Instant.parse("2026-03-11T09:00:00Z");
        @Nullable Instant done = ran ? at.plusSeconds(1200) : null;
        return new Turn(
                BookingId.next(),
                student.section(),
                student.login(),
                student.name(),
                assignment,
                2,
                "Avocet",
                at,
                ran ? BookingState.CLOSED_OUT : BookingState.MISSED,
                done,
                done,
                ran ? "Adaeze Lanternby" : null,
                done,
                done);
    }

    @Test
    void listsWhoNeverCameAndWhoIsEnrolledNoMore() {
        Student gone = new Student("", "tal", "Tal Emberley");

        List<AttendanceLine> lines =
                AttendanceLine.of(List.of(NOOR, WREN), ASKED, List.of(turn(gone, null, true), turn(NOOR, null, false)));

        assertThat(lines).extracting(AttendanceLine::name).containsExactly(NOOR.name(), WREN.name(), gone.name());
        assertThat(lines).extracting(AttendanceLine::turns).containsExactly(1, 0, 1);
        assertThat(lines).extracting(AttendanceLine::counted).containsExactly(0, 0, 1);
        assertThat(lines.get(1).isAsked())
                .as("section 02 has nothing to hand in")
                .isFalse();
    }

    @Test
    void countsWhoIsInTwoSectionsOnce() {
        Student again = new Student("02", NOOR.login(), NOOR.name());
        Turn turn = turn(NOOR, "Peg and plate", true);
        Turn sameTurn = new Turn(
                turn.booking(),
                "02",
                turn.login(),
                turn.name(),
                turn.assignment(),
                turn.minimumRuns(),
                turn.cell(),
                turn.start(),
                turn.state(),
                turn.checkedInAt(),
                turn.releasedAt(),
                turn.releasedBy(),
                turn.startedAt(),
                turn.closedOutAt());
        List<Asked> asked = List.of(new Asked("01", "Peg and plate", 1), new Asked("02", "Peg and plate", 2));

        List<AttendanceLine> lines = AttendanceLine.of(List.of(NOOR, again), asked, List.of(turn, sameTurn));

        assertThat(lines).extracting(AttendanceLine::turns).containsExactly(1, 1);
        assertThat(lines).extracting(AttendanceLine::isMet).containsExactly(true, false);
        assertThat(AttendanceLine.asked(lines)).containsExactly(lines);
        assertThat(AttendanceRows.once(List.of(turn, turn(NOOR, null, false), sameTurn)))
                .extracting(Turn::section)
                .containsExactly("01, 02", "01");
    }

    @Test
    void countsTheRunsOfEachAssignmentByThemselves() {
        List<Turn> three = List.of(
                turn(NOOR, "Peg and plate", true),
                turn(NOOR, "Peg and plate", true),
                turn(NOOR, "Peg and plate", true),
                turn(NOOR, "Sorting run", false));

        AttendanceLine without = AttendanceLine.of(List.of(NOOR), ASKED, three).get(0);
        assertThat(without.needed()).isEqualTo("Peg and plate 3 of 2, Sorting run 0 of 1");
        assertThat(without.isMet()).as("three of one are not one of the other").isFalse();

        AttendanceLine with = AttendanceLine.of(
                        List.of(NOOR), ASKED, List.of(three.get(0), three.get(1), turn(NOOR, "Sorting run", true)))
                .get(0);
        assertThat(with.isMet()).isTrue();
    }
}
