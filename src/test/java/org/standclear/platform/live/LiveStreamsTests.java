package org.standclear.platform.live;

import static org.assertj.core.api.Assertions.assertThat;
import static org.mockito.Mockito.mock;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.security.AccountStates.AccountState;

/** How many listen at once: eight each, four hundred in all, and a place that is left is taken by the next. */
class LiveStreamsTests {

    private final LiveStreams streams = new LiveStreams(
            new LiveHub(),
            person -> Optional.of(new AccountState("Yuki", Map.of(), false)),
            mock(CellLabs.class),
            Duration.ofHours(1));
    private final List<PersonId> people = new ArrayList<>();

    @BeforeEach
    void start() {
        streams.start();
    }

    @AfterEach
    void stop() {
        streams.stop();
    }

    private void full() {
        for (int person = 0; person < LiveStreams.IN_ALL / LiveStreams.FOR_EACH; person++) {
            PersonId one = PersonId.next();
            people.add(one);
            for (int i = 0; i < LiveStreams.FOR_EACH; i++) {
                assertThat(streams.open(one)).isPresent();
            }
        }
        assertThat(streams.count()).isEqualTo(400);
    }

    @Test
    void takesFourHundredAndNoMore() {
        full();
        assertThat(streams.open(PersonId.next()))
                .as("the four hundred and first")
                .isEmpty();
        assertThat(streams.count()).isEqualTo(400);
    }

    @Test
    void letsWhoListensAlreadyGoToAnotherPageWhenFull() {
        full();
        assertThat(streams.open(people.get(0))).as("their oldest gives way").isPresent();
        assertThat(streams.count()).isEqualTo(400);
    }

    @Test
    void keepsEightOfOnePerson() {
        PersonId yuki = PersonId.next();
        for (int i = 0; i < 20; i++) {
            assertThat(streams.open(yuki)).isPresent();
        }
        assertThat(streams.count()).isEqualTo(LiveStreams.FOR_EACH);
    }

    @Test
    void takesNobodyOnceStopped() {
        streams.stop();
        assertThat(streams.open(PersonId.next())).isEmpty();
        assertThat(streams.count()).isZero();
    }
}
