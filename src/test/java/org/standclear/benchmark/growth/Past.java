package org.standclear.benchmark.growth;

import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.UUID;
import org.standclear.benchmark.growth.PastTurn.Bench;
import org.standclear.benchmark.growth.PastTurn.Work;

/**
 * A lab's past of so many bookings. The latest thousand are a term: eighteen a day, by the students who are there now. What
 * lies before is by former students, round the clock, so that a million takes a dozen years and the term before today is
 * the same whatever the size: only then does a page that grows show that it reads what it does not show.
 *
 * @param until everything has ended by then
 * @param size how many bookings
 */
record Past(Grounds grounds, Instant until, int size) {

    static final int TERM = 1000;

    private static final int A_DAY_IN_TERM = 18;
    private static final int A_DAY_BEFORE = 46;
    private static final int TURNS_OF_A_FORMER_STUDENT = 50;
    private static final int FEWEST_FORMER_STUDENTS = 200;
    private static final Duration SLOT = Duration.ofMinutes(30);

    /**
     * What the past refers to.
     *
     * @param students those of now, who made the term's bookings
     * @param releaser who released every run
     * @param work what the term's bookings were for
     */
    record Grounds(UUID lab, List<Bench> benches, List<UUID> students, UUID releaser, Work work) {

        Grounds {
            benches = List.copyOf(benches);
            students = List.copyOf(students);
        }
    }

    /** How many people booked who are not there any more. */
    int formerStudents() {
        return size <= TERM ? 0 : Math.max(FEWEST_FORMER_STUDENTS, (size - TERM) / TURNS_OF_A_FORMER_STUDENT);
    }

    static UUID formerStudent(int number) {
        return new UUID(0x000000A0_0000_7000L, 0x8000_0000_0000_0000L + number);
    }

    /** The turn of that number; 1 is the oldest. */
    PastTurn turn(int number) {
        int before = size - number;
        return before < TERM ? inTerm(number, before) : earlier(number, before - TERM);
    }

    private Instant day(int back) {
        return until.truncatedTo(ChronoUnit.DAYS).minus(Duration.ofDays(back));
    }

    private PastTurn inTerm(int number, int before) {
        int inDay = before % A_DAY_IN_TERM;
        int cells = grounds.benches().size();
        Instant hour = day(1 + before / A_DAY_IN_TERM).plus(Duration.ofHours(8)).plus(SLOT.multipliedBy(inDay / cells));
        List<UUID> students = grounds.students();
        UUID operator = students.get(before % students.size());
        UUID attendant = students.get((before + students.size() / 2) % students.size());
        return made(number, hour, grounds.benches().get(inDay % cells), operator, attendant, grounds.work());
    }

    private PastTurn earlier(int number, int before) {
        int cells = grounds.benches().size();
        int slot = before / cells % A_DAY_BEFORE;
        int day = 2 + TERM / A_DAY_IN_TERM + before / (cells * A_DAY_BEFORE);
        int former = formerStudents();
        // a course, an assignment and a program of their own for each of them, long gone
        Work work = new Work(
                ofThePast(0xB0, before / 500),
                ofThePast(0xB1, before / 500),
                ofThePast(0xB2, before % former),
                ofThePast(0xB3, before % former));
        return made(
                number,
                day(day).plus(SLOT.multipliedBy(slot)),
                grounds.benches().get(before % cells),
                formerStudent(before % former),
                formerStudent((before + former / 2) % former),
                work);
    }

    private static UUID ofThePast(int kind, int number) {
        return new UUID(((long) kind << 32) + 0x7000L, 0x8000_0000_0000_0000L + number);
    }

    private static PastTurn made(int number, Instant hour, Bench bench, UUID operator, UUID attendant, Work work) {
        Instant start = hour.plus(Duration.ofMinutes(bench.offsetMinutes()));
        return new PastTurn(number, start, start.plus(SLOT), bench, operator, attendant, state(number), work);
    }

    /** Of twenty bookings sixteen were run, two missed, one cancelled late and one in time; roughly the demo's shares. */
    private static String state(int number) {
        return switch (number % 20) {
            case 3, 11 -> "MISSED";
            case 7 -> "LATE_CANCELLED";
            case 15 -> "CANCELLED";
            default -> "CLOSED_OUT";
        };
    }
}
