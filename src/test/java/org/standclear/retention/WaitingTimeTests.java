package org.standclear.retention;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.standclear.platform.ids.PersonId;
import org.standclear.retention.DisposalWaits.Change;
import org.standclear.retention.DisposalWaits.Shorter;

/** A longer wait holds at once, a shorter one only when the one before it has passed. */
class WaitingTimeTests {

    private static final Instant NOW = Instant.parse("2026-11-27T12:00:00Z");

    private static Change change(int number, int days, Duration ago) {
        return new Change(number, days, new PersonId(new UUID(0, 1)), NOW.minus(ago), "a test");
    }

    @Test
    void isSevenDaysUntilSomebodyChangesIt() {
        assertThat(WaitingTime.at(NOW, List.of()).days()).isEqualTo(7);
        assertThat(WaitingTime.at(NOW, List.of()).number()).isZero();
    }

    @Test
    void aLongerOneHoldsAtOnce() {
        assertThat(WaitingTime.at(NOW, List.of(change(1, 14, Duration.ZERO))).days())
                .isEqualTo(14);
        assertThat(WaitingTime.at(NOW, List.of(change(1, 14, Duration.ZERO))).shorterLater())
                .isEmpty();
    }

    @Test
    void aShorterOneHoldsWhenTheOldOneHasPassedAndNotASecondBefore() {
        Change shorter = change(1, 1, Duration.ofDays(7).minusSeconds(1));
        assertThat(WaitingTime.at(NOW, List.of(shorter)).days()).isEqualTo(7);
        assertThat(WaitingTime.at(NOW, List.of(shorter)).shorterLater()).contains(new Shorter(1, NOW.plusSeconds(1)));
        assertThat(WaitingTime.at(NOW.plusSeconds(1), List.of(shorter)).days()).isEqualTo(1);
        assertThat(WaitingTime.at(NOW.plusSeconds(2), List.of(shorter)).days()).isEqualTo(1);
    }

    @Test
    void twoShorterOnesAfterAnotherDoNotHurryIt() {
        List<Change> steps = List.of(change(2, 1, Duration.ofDays(1)), change(1, 3, Duration.ofDays(2)));
        assertThat(WaitingTime.at(NOW, steps).days()).isEqualTo(7);
        assertThat(WaitingTime.at(NOW.plus(Duration.ofDays(5)), steps).days()).isEqualTo(1);
    }

    @Test
    void goingUpAndDownAgainDoesNotHurryItEither() {
        List<Change> steps = List.of(
                change(2, 1, Duration.ofDays(1)),
                change(1, 30, Duration.ofDays(1).plusSeconds(1)));
        assertThat(WaitingTime.at(NOW, steps).days()).isEqualTo(30);
        assertThat(WaitingTime.at(NOW.plus(Duration.ofDays(30)), steps).days()).isEqualTo(1);
    }
}
