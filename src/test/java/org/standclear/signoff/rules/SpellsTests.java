package org.standclear.signoff.rules;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.standclear.signoff.Turn;
import org.standclear.signoff.rules.Spells.Spell;

class SpellsTests {

    private static final Instant NINE = Instant.parse("2026-03-11T09:00:00Z");
    private static final Duration REST = Duration.ofMinutes(15);

    private static Instant at(long minute) {
        return NINE.plusSeconds(60 * minute);
    }

    private static Spell spell(long from, long until) {
        return new Spell(at(from), at(until), false);
    }

    private static long minutes(long now, Spell... spells) {
        return Spells.withoutRest(List.of(spells), REST, at(now)).toMinutes();
    }

    @Test
    void countsNothingWithoutASignature() {
        assertThat(minutes(20)).isZero();
    }

    @Test
    void countsWhatGoesOnNow() {
        assertThat(minutes(7, spell(0, 7))).isEqualTo(7);
    }

    @Test
    void addsUpTurnsWithShortBreaksBetween() {
        assertThat(minutes(20, spell(0, 5), spell(12, 20))).isEqualTo(13);
    }

    @Test
    void beginsANewTurnAfterARest() {
        assertThat(minutes(20, spell(0, 5), spell(19, 20))).as("14 min away").isEqualTo(6);
        assertThat(minutes(21, spell(0, 5), spell(20, 21))).as("15 min away").isEqualTo(1);
        assertThat(minutes(20, spell(0, 5))).as("away for 15 min now").isZero();
        assertThat(minutes(19, spell(0, 5))).as("away for 14 min now").isEqualTo(5);
    }

    @Test
    void countsNoMinuteTwice() {
        assertThat(minutes(10, spell(0, 8), spell(5, 10))).isEqualTo(10);
        assertThat(minutes(10, spell(0, 10), spell(3, 6))).isEqualTo(10);
    }

    @Test
    void cannotTellATurnThatGoesOnSinceLaterThanNow() {
        assertThat(Spells.beganLater(List.of(new Spell(at(20), at(9), true)), at(9)))
                .isTrue();
        assertThat(Spells.beganLater(List.of(new Spell(at(20), at(9), false)), at(9)))
                .as("it has ended, whenever it began")
                .isFalse();
        assertThat(Spells.beganLater(List.of(new Spell(at(10), at(9), true)), at(9)))
                .as("a correction of the clock")
                .isFalse();
        assertThat(Spells.beganLater(List.of(new Spell(at(10).plusNanos(1), at(9), true)), at(9)))
                .isTrue();
        assertThat(Spells.beganLater(List.of(), at(9))).isFalse();
    }

    @Test
    void countsATurnWholeThatCannotBeTold() {
        Turn turn = Turn.untold(Duration.ofMinutes(15), at(9));
        assertThat(turn.over()).isTrue();
        assertThat(turn.until()).isEqualTo(at(9));
    }

    @Test
    void isOverAtTheLimitAndNotJustUnderIt() {
        Duration limit = Duration.ofMinutes(15);
        assertThat(new Turn(limit.minusNanos(1), limit, NINE).over()).isFalse();
        assertThat(new Turn(limit, limit, NINE).over()).isTrue();
        assertThat(new Turn(Duration.ofMinutes(4), limit, NINE).until()).isEqualTo(at(11));
    }
}
