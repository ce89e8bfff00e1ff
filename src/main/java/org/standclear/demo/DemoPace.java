package org.standclear.demo;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.Random;
import org.springframework.context.annotation.Profile;
import org.springframework.stereotype.Component;
import org.standclear.platform.time.ClockHands;

/** Lets time pass while the demo's people read and answer, so that their lists are signed as people sign them. */
@Component
@Profile("demo")
class DemoPace {

    private static final int SEED = 271828;

    private final ClockHands hands;
    private final Clock clock;
    private final Random chance = new Random(SEED);
    private Instant latest = Instant.MAX;

    DemoPace(ClockHands hands, Clock clock) {
        this.hands = hands;
        this.clock = clock;
    }

    /** Nothing takes so long that it goes beyond this instant: what is played lies in the past. */
    void noLaterThan(Instant end) {
        latest = end;
    }

    /** Some seconds pass, drawn by lot between the two. */
    void takes(int fewest, int most) {
        Instant then = clock.instant().plusSeconds(fewest + chance.nextInt(most - fewest + 1));
        hands.standAt(then.isAfter(latest) ? latest : then);
    }

    /** What comes next comes at its time, or now when what came before took longer. */
    void goOnAt(Instant planned) {
        Instant now = clock.instant();
        boolean late = Duration.between(planned, now).abs().compareTo(Duration.ofHours(1)) < 0 && now.isAfter(planned);
        hands.standAt(late ? now : planned);
    }
}
