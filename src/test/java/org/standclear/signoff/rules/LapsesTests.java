package org.standclear.signoff.rules;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.standclear.booking.Booking;
import org.standclear.cell.Cell;
import org.standclear.cell.CellState;
import org.standclear.platform.ids.PersonId;
import org.standclear.program.Revision;
import org.standclear.signoff.LapseRule;
import org.standclear.signoff.Release;

class LapsesTests {

    private final Release release = Bench.release();
    private Booking booking = Bench.booking(Bench.MATEO.id(), Bench.REVISION.id());
    private Cell cell = Bench.cell(CellState.IN_SERVICE, 7);
    private @Nullable Revision attached = Bench.REVISION;
    private @Nullable Revision newer;
    private boolean answerInForce = true;
    private boolean attendantIsStaff;
    private @Nullable String ended;
    private boolean releaserOnDuty = true;
    private @Nullable String turnOver;
    private boolean testedSince;
    private Instant now = Bench.NOW.plusSeconds(60);

    private Optional<Lapses.Found> ask() {
        return Lapses.first(question());
    }

    private void expectSuspended(LapseRule rule, String because) {
        assertThat(ask()).as("it is not over").isEmpty();
        assertThat(Lapses.suspends(question())).hasValueSatisfying(found -> {
            assertThat(found.rule()).isEqualTo(rule);
            assertThat(found.because()).contains(because);
        });
    }

    private LapseQuestion question() {
        return new LapseQuestion(
                release,
                booking,
                cell,
                attached,
                newer,
                answerInForce,
                attendantIsStaff,
                ended,
                releaserOnDuty,
                Bench.ADAEZE.printedName(),
                "Hemi Coppergate",
                turnOver,
                testedSince,
                now);
    }

    private void expect(LapseRule rule, String because) {
        assertThat(ask()).hasValueSatisfying(found -> {
            assertThat(found.rule()).isEqualTo(rule);
            assertThat(found.because()).contains(because);
        });
    }

    @Test
    void holdsWhileNothingChanged() {
        assertThat(ask()).isEmpty();
    }

    @Test
    void lapsesWhenOneByteOfTheFileChanged() {
        attached = Bench.revision(2, "peg and plate.", "");
        newer = attached;
        expect(LapseRule.FILE_CHANGED, "The program file changed. Revision 2 is on the booking now.");
    }

    @Test
    void lapsesWhenOnlyTheDeclarationChanged() {
        attached = Bench.revision(2, "peg and plate", "part-kg: 0.2");
        newer = attached;
        expect(LapseRule.FILE_CHANGED, "The declaration changed.");
    }

    @Test
    void lapsesWhenANewerRevisionCameAfterTheRelease() {
        newer = Bench.revision(2, "peg and plate.", "");
        expect(LapseRule.FILE_CHANGED, "Revision 2 came after the release.");
    }

    @Test
    void lapsesWhenTheProgramWasTakenOff() {
        attached = null;
        expect(LapseRule.FILE_CHANGED, "taken off");
    }

    @Test
    void lapsesWhenTheCellMovedToAnotherVersion() {
        cell = Bench.cell(CellState.IN_SERVICE, 8);
        expect(LapseRule.CELL_VERSION_CHANGED, "Avocet moved from version 7 to version 8.");
    }

    @Test
    void lapsesWhenTheLimitsOrRulesOfTheCheckChanged() {
        answerInForce = false;
        expect(LapseRule.LIMITS_CHANGED, "The limits or the rules of the check changed");
    }

    @Test
    void lapsesWhenTheCellIsTaggedOutOrHeld() {
        cell = Bench.cell(CellState.OUT_OF_SERVICE, 7);
        expect(LapseRule.CELL_NOT_IN_SERVICE, "Avocet is out of service: cable chafe.");
        cell = Bench.cell(CellState.HELD, 7);
        expect(LapseRule.CELL_NOT_IN_SERVICE, "Avocet is held: cable chafe.");
    }

    @Test
    void lapsesWhenTheCellIsRestrictedAndTheAttendantIsNotStaff() {
        cell = Bench.cell(CellState.RESTRICTED, 7);
        expect(LapseRule.ATTENDANT_NOT_STAFF, "only staff attend");
        attendantIsStaff = true;
        assertThat(ask()).isEmpty();
    }

    @Test
    void isSuspendedWhileAnotherAttendantHasNotSigned() {
        assertThat(Lapses.suspends(question())).isEmpty();
        booking = Bench.booking(Bench.HEMI.id(), Bench.REVISION.id());
        expectSuspended(LapseRule.ATTENDANT_SWAPPED, "Hemi Coppergate has not signed yet.");
    }

    @Test
    void isSuspendedWhenTheAttendantLeft() {
        booking = Bench.booking(null, Bench.REVISION.id());
        expectSuspended(LapseRule.ATTENDANT_LEFT, "nobody else is named");
    }

    @Test
    void isSuspendedWhenTheTurnIsOver() {
        turnOver = "The turn of Mateo Ironbark at the e-stop is over (15 min).";
        expectSuspended(LapseRule.TURN_OVER, "The turn of Mateo Ironbark");
    }

    @Test
    void lapsesWhenTheValuesWereReadAgainInADayTest() {
        testedSince = true;
        expect(LapseRule.VALUES_CHANGED, "A day test was made since the release");
    }

    @Test
    void lapsesWhenTheOperatorWasSwapped() {
        Booking other = Bench.booking(Bench.MATEO.id(), Bench.REVISION.id());
        booking = new Booking(
                other.id(),
                other.cell(),
                other.start(),
                other.end(),
                PersonId.next(),
                other.attendant(),
                null,
                null,
                other.revision(),
                other.state(),
                other.checkedInAt(),
                1);
        expect(LapseRule.OPERATOR_SWAPPED, "Another operator");
    }

    @Test
    void lapsesWhenAnAuthorisationEnded() {
        ended = "Mateo Ironbark is no longer authorised as e-stop attendant.";
        expect(LapseRule.AUTHORISATION_ENDED, "no longer authorised");
    }

    @Test
    void lapsesWhenTheReleaserWentOffDuty() {
        releaserOnDuty = false;
        expect(LapseRule.RELEASER_OFF_DUTY, "Adaeze Lanternby is off duty.");
    }

    @Test
    void lapsesTenMinutesAfterTheRelease() {
        now = release.startBy().minusNanos(1000);
        assertThat(ask()).isEmpty();
        now = release.startBy();
        expect(LapseRule.NOT_STARTED_IN_TIME, "Not started within 10 min.");
    }

    @Test
    void lapsesWhenTheSlotEnds() {
        now = Bench.END;
        expect(LapseRule.WINDOW_OVER, "The slot has ended.");
    }

    @Test
    void namesEachRuleOnce() {
        assertThat(LapseRule.values()).extracting(LapseRule::code).doesNotHaveDuplicates();
        assertThat(LapseRule.values())
                .allSatisfy(rule -> assertThat(LapseRule.of(rule.code())).isEqualTo(rule));
    }
}
