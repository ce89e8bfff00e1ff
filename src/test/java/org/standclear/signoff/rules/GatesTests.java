package org.standclear.signoff.rules;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Objects;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.standclear.booking.Booking;
import org.standclear.cell.Cell;
import org.standclear.cell.CellState;
import org.standclear.check.StoredAnswer;
import org.standclear.check.StoredAnswer.Verdict;
import org.standclear.people.Person;
import org.standclear.platform.ids.PersonId;
import org.standclear.signoff.Obstacle;
import org.standclear.signoff.Waiver;

class GatesTests {

    private Booking booking = Bench.booking(Bench.MATEO.id(), Bench.REVISION.id());
    private Cell cell = Bench.cell(CellState.IN_SERVICE, 7);
    private @Nullable String slotOver;
    private List<Obstacle> ofTheCell = List.of();
    private boolean operatorAuthorised = true;
    private @Nullable Person attendant = Bench.MATEO;
    private boolean attendantAuthorised = true;
    private @Nullable String otherStop;
    private @Nullable String otherRun;
    private List<Person> staff = List.of(Bench.ADAEZE, Bench.HEMI);
    private List<GateQuestion.NotClosedOut> notClosedOut = List.of();
    private @Nullable Waiver waiver;
    private boolean answerInForce = true;
    private @Nullable StoredAnswer answer = Bench.answer(Verdict.WITHIN, 7);

    private List<Obstacle> ask() {
        return Gates.ask(new GateQuestion(
                booking,
                cell,
                Bench.NOW,
                slotOver,
                ofTheCell,
                Bench.NOOR,
                operatorAuthorised,
                attendant,
                attendantAuthorised,
                otherStop,
                otherRun,
                staff,
                notClosedOut,
                answer,
                answerInForce,
                answer == null ? "No answer yet." : AnswerLine.of(answer, cell),
                waiver));
    }

    private void expect(String code, String says, String mend) {
        assertThat(ask()).singleElement().satisfies(obstacle -> {
            assertThat(obstacle.code()).isEqualTo(code);
            assertThat(obstacle.says()).isEqualTo(says);
            assertThat(obstacle.mend()).contains(mend);
        });
    }

    @Test
    void letsAWaivedProgramPassOnTheVersionOfTheCellOnly() {
        answer = Bench.answer(Verdict.OUTSIDE, 7);
        assertThat(ask()).extracting(Obstacle::code).containsExactly("not-within-limits");
        waiver = new Waiver(
                UUID.randomUUID(),
                booking.id(),
                answer.id(),
                List.of("payload"),
                "one part weighed at the bench",
                null,
                PersonId.next(),
                Bench.NOW,
                Bench.NOW.plusSeconds(60),
                null,
                null);
        assertThat(ask()).isEmpty();
        answer = Bench.answer(Verdict.OUTSIDE, 6);
        assertThat(ask()).extracting(Obstacle::code).containsExactly("not-within-limits");
    }

    @Test
    void doesNotCountAWaiverOfUnreadLinesThatNobodyConfirmed() {
        for (String read : new String[] {null, Waiver.LINES_READ}) {
            Waiver of = new Waiver(
                    UUID.randomUUID(),
                    booking.id(),
                    Objects.requireNonNull(answer).id(),
                    List.of("payload", "coverage"),
                    "looked at it at the bench",
                    read,
                    PersonId.next(),
                    Bench.NOW,
                    Bench.NOW.plusSeconds(60),
                    null,
                    null);
            assertThat(of.standsAt(Bench.NOW)).isEqualTo(read != null);
        }
    }

    @Test
    void refusesAnAnswerOfLimitsThatAreNoLongerInForce() {
        answerInForce = false;
        expect(
                "limits-changed",
                "The limits or the rules of the check changed since the program was checked.",
                "look again");
    }

    @Test
    void allOpenWhenEverythingHolds() {
        assertThat(ask()).isEmpty();
        assertThat(Gates.ALL).hasSize(11);
    }

    @Test
    void saysUntilWhenAReleaseCouldBeSigned() {
        slotOver = "The slot ends at 13:37: a release could be signed until 13:36.";
        expect(
                "slot-over",
                "The slot ends at 13:37: a release could be signed until 13:36.",
                "Noor Candlewick can book another slot.");
    }

    @Test
    void handsOnWhatTheCellSays() {
        ofTheCell = List.of(new Obstacle("day-test-missing", "Avocet has had no day test today.", "Adaeze can do it."));
        expect("day-test-missing", "Avocet has had no day test today.", "Adaeze can do it.");
    }

    @Test
    void refusesWithoutProgram() {
        booking = Bench.booking(Bench.MATEO.id(), null);
        answer = null;
        expect("no-program", "No program is attached to the booking.", "Noor Candlewick can attach one.");
    }

    @Test
    void refusesAnAnswerOutsideLimitsWithItsFirstReason() {
        answer = Bench.answer(Verdict.OUTSIDE, 7);
        expect(
                "not-within-limits",
                "Outside limits on Avocet version 7: The tool point reaches 312 mm/s of 250.",
                "Noor Candlewick can mend the program");
    }

    @Test
    void refusesWhatIsNotCheckable() {
        answer = Bench.answer(Verdict.NOT_CHECKABLE, 7);
        assertThat(ask()).extracting(Obstacle::code).containsExactly("not-within-limits");
    }

    @Test
    void refusesAnAnswerOnAnotherCellVersion() {
        answer = Bench.answer(Verdict.WITHIN, 6);
        assertThat(ask()).extracting(Obstacle::code).containsExactly("not-within-limits");
    }

    @Test
    void refusesWithoutAttendant() {
        attendant = null;
        expect("no-attendant", "Nobody is named for the e-stop.", "Noor Candlewick can name somebody");
    }

    @Test
    void refusesTheOperatorAtTheirOwnStop() {
        attendant = Bench.NOOR;
        expect(
                "attendant-is-operator",
                "The e-stop attendant must be someone else than the operator.",
                "Noor Candlewick can name somebody else");
    }

    @Test
    void refusesPeopleWhoAreNotAuthorisedNow() {
        operatorAuthorised = false;
        expect("operator-not-authorised", "Noor Candlewick is not authorised as operator on Avocet now.", "instructor");
        operatorAuthorised = true;
        attendantAuthorised = false;
        expect(
                "attendant-not-authorised",
                "Mateo Ironbark is not authorised as e-stop attendant on Avocet now.",
                "instructor");
    }

    @Test
    void refusesAStudentAtTheStopOfARestrictedCell() {
        cell = Bench.cell(CellState.RESTRICTED, 7);
        expect(
                "attendant-not-staff",
                "Avocet is restricted: only staff attend the e-stop.",
                "Adaeze Lanternby or Hemi Coppergate can attend.");
        attendant = Bench.ADAEZE;
        assertThat(ask()).isEmpty();
    }

    @Test
    void refusesAnAttendantAtAnotherStop() {
        otherStop = "Bittern";
        expect("attendant-elsewhere", "Mateo Ironbark is at the e-stop of Bittern now.", "One person, one e-stop");
    }

    @Test
    void refusesAnOperatorInAnotherRun() {
        otherRun = "Bittern";
        expect("operator-elsewhere", "Noor Candlewick is in a run on Bittern now.", "Finish that run first.");
    }

    @Test
    void refusesWhenNoStaffAreOnDuty() {
        staff = List.of();
        expect("no-staff-on-duty", "No technician or instructor is on duty now.", "duty plan");
    }

    @Test
    void waitsForTheCloseOutOfTheRunBefore() {
        notClosedOut = List.of(new GateQuestion.NotClosedOut("Yuki Halfmoon", "Wed 12:30-13:00"));
        expect(
                "previous-not-closed-out",
                "The run of Yuki Halfmoon (Wed 12:30-13:00) on Avocet is not closed out.",
                "Yuki Halfmoon or Adaeze Lanternby or Hemi Coppergate can close it out.");
    }

    @Test
    void namesEverythingAtOnce() {
        attendantAuthorised = false;
        staff = List.of();
        assertThat(ask()).extracting(Obstacle::code).containsExactly("attendant-not-authorised", "no-staff-on-duty");
    }
}
