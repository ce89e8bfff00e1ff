package org.standclear.booking.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.standclear.cell.Cell;
import org.standclear.cell.CellState;
import org.standclear.people.Authorisation;
import org.standclear.people.Duty;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.LabId;
import org.standclear.platform.ids.PersonId;

class WaitableCellsTests {

    private static final Instant NOW = Instant.parse("2026-03-11T09:00:00Z");
    private static final Cell AVOCET = cell("Avocet");
    private static final Cell BITTERN = cell("Bittern");

    @Test
    void saysWhoMakesTheFirstCell() {
        WaitableCells none = WaitableCells.of(List.of(), List.of(held(Duty.OPERATOR, null, NOW.plusSeconds(1))), NOW);
        assertThat(none.isEmpty()).isTrue();
        assertThat(none.none()).contains("no cell");
        assertThat(none.todo()).contains("proposes one");
    }

    @Test
    void saysWhoEntersTheAuthorisation() {
        for (Authorisation worthless : List.of(
                held(Duty.ATTENDANT, null, NOW.plusSeconds(1)),
                held(Duty.OPERATOR, null, NOW),
                held(Duty.OPERATOR, CellId.next(), NOW.plusSeconds(1)))) {
            WaitableCells none = WaitableCells.of(List.of(AVOCET, BITTERN), List.of(worthless), NOW);
            assertThat(none.isEmpty()).as(worthless.toString()).isTrue();
            assertThat(none.none()).contains("not authorised as operator");
            assertThat(none.todo()).contains("induction");
        }
    }

    @Test
    void offersTheCellsThatOneMayOperate() {
        List<Cell> both = List.of(AVOCET, BITTERN);
        WaitableCells one = WaitableCells.of(both, List.of(held(Duty.OPERATOR, BITTERN.id(), NOW.plusNanos(1))), NOW);
        assertThat(one.choices().values()).containsExactly("Any cell I may operate", "Bittern");
        WaitableCells all = WaitableCells.of(both, List.of(held(Duty.OPERATOR, null, NOW.plusSeconds(1))), NOW);
        assertThat(all.choices().values()).containsExactly("Any cell I may operate", "Avocet", "Bittern");
        assertThat(all.none()).isEmpty();
    }

    private static Authorisation held(Duty duty, @Nullable CellId cell, Instant until) {
        return new Authorisation(PersonId.next(), duty, cell, NOW.minus(Duration.ofDays(9)), until, PersonId.next());
    }

    private static Cell cell(String name) {
        return new Cell(CellId.next(), LabId.next(), name, CellState.IN_SERVICE, "", 1, 0);
    }
}
