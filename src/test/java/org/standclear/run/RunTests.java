package org.standclear.run;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.standclear.platform.ids.BookingId;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.RevisionId;
import org.standclear.platform.ids.RunId;

class RunTests {

    private static final Instant START = Instant.parse("2026-03-11T13:09:00Z");
    private static final RevisionId REVISION = RevisionId.next();

    private final Run running = new Run(
            RunId.next(),
            BookingId.next(),
            CellId.next(),
            7,
            REVISION,
            RunState.RUNNING,
            START,
            null,
            null,
            0,
            0,
            List.of(),
            1);

    @Test
    void goesItsWay() {
        Run stopped = running.passed().stopped();
        assertThat(stopped.state()).isEqualTo(RunState.STOPPED);
        assertThat(stopped.stops()).isEqualTo(1);

        Run closed = stopped.startedAgain(7, REVISION)
                .passed()
                .finished(2, START.plusSeconds(60))
                .closedOut(START.plusSeconds(90));
        assertThat(closed.state()).isEqualTo(RunState.CLOSED_OUT);
        assertThat(closed.passes()).isEqualTo(2);
        assertThat(closed.stops()).isEqualTo(1);
    }

    @Test
    void keepsEveryPressOnTopOfAStop() {
        Run pressedTwice = running.stopped().stopped();
        assertThat(pressedTwice.state()).isEqualTo(RunState.STOPPED);
        assertThat(pressedTwice.stops()).isEqualTo(2);
        assertThat(running.finished(1, START).stopped().state()).isEqualTo(RunState.FINISHED);
    }

    @Test
    void refusesWhatDoesNotFit() {
        assertThatThrownBy(() -> running.startedAgain(7, REVISION))
                .isInstanceOf(IllegalStateException.class)
                .hasMessage("a run that is running cannot start again");
        assertThatThrownBy(() -> running.stopped().passed()).isInstanceOf(IllegalStateException.class);
        assertThatThrownBy(() -> running.closedOut(START)).isInstanceOf(IllegalStateException.class);
        assertThatThrownBy(() -> running.finished(1, START).finished(2, START))
                .isInstanceOf(IllegalStateException.class);
    }

    @Test
    void closesOutOneTapAfterTheOtherMotionFirst() {
        assertThat(CloseOutItem.after(0)).contains(CloseOutItem.MOTION_DISABLED);
        assertThat(CloseOutItem.after(1)).contains(CloseOutItem.PARTS_OUT);
        assertThat(CloseOutItem.after(4)).contains(CloseOutItem.ODD);
        assertThat(CloseOutItem.after(5)).isEmpty();
    }

    @Test
    void allowsTheShortListOnlyAfterAPrecaution() {
        assertThat(ResetCause.values()).filteredOn(ResetCause::shortList).containsExactly(ResetCause.PRECAUTION);
        assertThat(ResetCause.of("precaution")).contains(ResetCause.PRECAUTION);
        assertThat(ResetCause.of("not-known")).isEmpty();
    }
}
