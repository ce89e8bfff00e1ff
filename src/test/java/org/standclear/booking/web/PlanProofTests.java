package org.standclear.booking.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.EnumMap;
import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.standclear.booking.allocation.Search;
import org.standclear.booking.allocation.Search.Value;
import org.standclear.core.allocation.Level;
import org.standclear.platform.ids.PersonId;

/** What the page says of how far a plan is proven. */
class PlanProofTests {

    private static final Instant NOW = Instant.parse("2026-11-16T08:00:00Z");

    private static Search search(Map<Level, Value> standing) {
        return new Search(
                UUID.randomUUID(),
                UUID.randomUUID(),
                Search.State.FOUND,
                1,
                standing,
                "",
                PersonId.next(),
                NOW,
                NOW,
                NOW);
    }

    private static Map<Level, Value> proven() {
        Map<Level, Value> standing = new EnumMap<>(Level.class);
        for (Level level : Level.values()) {
            standing.put(level, new Value(5, 5));
        }
        return standing;
    }

    @Test
    void saysThatNoBetterPlanExistsOnlyWhenEveryLineIsProven() {
        assertThat(PlanSheets.proof(search(proven()))).isEqualTo("Every line is proven: no better plan exists.");

        Map<Level, Value> standing = proven();
        standing.remove(Level.TOOL_CHANGES);
        assertThat(PlanSheets.proof(search(standing)))
                .isEqualTo("Proven best up to “wishes passed over”. The line “tool changes” has no bound yet.");
    }

    @Test
    void namesTheGapOfTheFirstLineThatIsNotProven() {
        Map<Level, Value> standing = proven();
        standing.put(Level.WISHES, new Value(232, 225));

        assertThat(PlanSheets.proof(search(standing)))
                .isEqualTo("Proven best up to “bookings moved”. "
                        + "The line “wishes passed over” may be 7 more than the least possible: 232, at least 225.");
        assertThat(PlanSheets.levels(search(standing)))
                .extracting(PlanSheets.LevelLine::gap)
                .containsExactly(
                        "proven best",
                        "proven best",
                        "proven best",
                        "proven best",
                        "proven best",
                        "at most 7 too many",
                        "least, with the lines above as here");
    }

    @Test
    void provesNothingBelowAFirstLineThatIsNot() {
        Map<Level, Value> standing = proven();
        standing.put(Level.MAKE_UPS, new Value(2, 1));
        standing.put(Level.TOOL_CHANGES, new Value(9, 4));

        assertThat(PlanSheets.proof(search(standing)))
                .isEqualTo("Nothing is proven best yet: "
                        + "the line “make-ups left out” may be 1 more than the least possible: 2, at least 1.");
        assertThat(PlanSheets.levels(search(standing)))
                .extracting(PlanSheets.LevelLine::gap)
                .doesNotContain("proven best")
                .endsWith("at most 5 too many, with the lines above as here");
    }
}
