package org.standclear.platform.forms;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.util.UUID;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.standclear.testing.MovableClock;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;

class UsedTokensIT {

    abstract static class Cases {

        @Autowired
        PostOnce once;

        @Autowired
        UsedTokens used;

        @Autowired
        MovableClock clock;

        @Test
        void areKnownForAWeekAndForgottenAfterwards() {
            String token = UUID.randomUUID().toString();
            Instant acted = clock.instant();
            assertThat(once.actedAt(token)).isEmpty();
            once.run(token, () -> "/here");

            clock.moveBy(Duration.ofDays(7));
            used.forgetOldOnes();
            assertThat(once.actedAt(token)).contains(acted);

            clock.moveBy(Duration.ofSeconds(1));
            used.forgetOldOnes();
            assertThat(once.actedAt(token)).isEmpty();
        }

        @Test
        void whatIsNoTokenHasNotActed() {
            assertThat(once.actedAt(null)).isEmpty();
            assertThat(once.actedAt("x")).isEmpty();
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
