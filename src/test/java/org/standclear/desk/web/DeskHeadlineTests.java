package org.standclear.desk.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.standclear.desk.web.TechnicianDesk.Due;
import org.standclear.desk.web.TechnicianDesk.Open;
import org.standclear.desk.web.TechnicianDesk.Start;

/** What stands at a cell comes before what is planned. */
class DeskHeadlineTests {

    private static final List<Start> NEXT = List.of(new Start(
            Instant.EPOCH,
            "Thu 14:07-14:37",
            "Bittern",
            "c",
            "b",
            "Noor",
            "Mateo",
            "ready",
            "ready",
            false,
            List.of()));
    private static final List<Due> TESTS = List.of(new Due("Curlew", "c", "Day test due", "gates", "due"));

    private static Open run(String cell, String state, boolean swap) {
        return new Open("r", cell, "c", "Noor", state, state, "since", swap);
    }

    @Test
    void tellsOfASwapThenOfStopsThenOfTests() {
        Open swap = run("Avocet", "running", true);
        Open stopped = run("Dunlin", "stopped", false);
        Open other = run("Curlew", "stopped", false);
        assertThat(DeskHeadline.of(NEXT, TESTS, List.of(stopped, swap)))
                .isEqualTo("Swap the e-stop attendant: Avocet.");
        assertThat(DeskHeadline.of(NEXT, TESTS, List.of(stopped, other)))
                .isEqualTo("Stopped, and waits for its reset: Dunlin, Curlew.");
        assertThat(DeskHeadline.of(NEXT, TESTS, List.of())).isEqualTo("Day test due on Curlew.");
    }

    @Test
    void tellsOfTheNextStartWhileRunsGoOn() {
        assertThat(DeskHeadline.of(NEXT, List.of(), List.of(run("Dunlin", "running", false))))
                .isEqualTo("Next: Bittern Thu 14:07-14:37, Noor.");
        assertThat(DeskHeadline.of(List.of(), List.of(), List.of(run("Dunlin", "finished", false))))
                .isEqualTo("Not closed out: Dunlin.");
        assertThat(DeskHeadline.of(List.of(), List.of(), List.of())).isEqualTo("Nothing starts any more today.");
    }
}
