package org.standclear.booking.allocation;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.PersonId;

class LongWatchTests {

    private static final Instant EIGHT = Instant.parse("2026-03-13T08:00:00Z");
    private static final LocalDate FRIDAY = LocalDate.of(2026, 3, 13);
    private static final int SLOT = 30;
    private static final PersonId MATEO = PersonId.next();

    @Test
    void namesWhoAttendsMoreTurnsInARowThanTheNumber() {
        assertThat(found(turns(MATEO, 0, 30, 60, 90))).isEmpty();
        assertThat(found(turns(MATEO, 0, 30, 60, 90, 120)))
                .containsExactly(new LongWatch(MATEO, FRIDAY, 5, Duration.ofMinutes(150)));
    }

    @Test
    void takesAQuarterOfAnHourForAPauseAndNoLess() {
        assertThat(found(turns(MATEO, 0, 30, 60, 90, 134))).hasSize(1);
        assertThat(found(turns(MATEO, 0, 30, 60, 90, 135))).isEmpty();
    }

    @Test
    void namesWhoAttendsLongerInADayWhateverThePauses() {
        assertThat(found(turns(MATEO, 0, 60, 120, 180, 240, 300, 360, 420))).isEmpty();
        assertThat(found(turns(MATEO, 0, 60, 120, 180, 240, 300, 360, 420, 480)))
                .containsExactly(new LongWatch(MATEO, FRIDAY, 1, Duration.ofMinutes(270)));
        int nextDay = 24 * 60;
        assertThat(found(turns(MATEO, 0, 60, 120, 180, 240, 300, 360, 420, nextDay)))
                .isEmpty();
    }

    @Test
    void countsEachPersonAlone() {
        PersonId noor = PersonId.next();
        List<PlannedTurn> plan = new ArrayList<>(turns(MATEO, 0, 60, 120));
        plan.addAll(turns(noor, 30, 90, 150));
        assertThat(found(plan)).isEmpty();
    }

    @Test
    void saysHowLongInWords() {
        assertThat(new LongWatch(MATEO, FRIDAY, 6, Duration.ofMinutes(210)).words())
                .isEqualTo("6 turns in a row at most, 3 h 30 min in all");
        assertThat(new LongWatch(MATEO, FRIDAY, 1, Duration.ofHours(5)).words())
                .isEqualTo("1 turn in a row at most, 5 h in all");
    }

    private static List<LongWatch> found(List<PlannedTurn> plan) {
        return LongWatch.in(plan, at -> at.atZone(ZoneOffset.UTC).toLocalDate());
    }

    private static List<PlannedTurn> turns(PersonId attendant, int... minutesAfterEight) {
        List<PlannedTurn> turns = new ArrayList<>();
        for (int minutes : minutesAfterEight) {
            Instant start = EIGHT.plus(Duration.ofMinutes(minutes));
            turns.add(new PlannedTurn(
                    UUID.randomUUID(),
                    0,
                    PersonId.next(),
                    null,
                    CellId.next(),
                    start,
                    start.plus(Duration.ofMinutes(SLOT)),
                    attendant,
                    null));
        }
        return turns;
    }
}
