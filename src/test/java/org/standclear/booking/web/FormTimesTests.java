package org.standclear.booking.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.time.ZoneId;
import java.util.HashMap;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.standclear.platform.ids.PersonId;

/** Times that forms ask for, on days on which the clocks change too (EU directive 2000/84/EC, last Sundays). */
class FormTimesTests {

    private static final ZoneId ZONE = ZoneId.of("Europe/Amsterdam");

    private final Map<String, String> errors = new HashMap<>();

    @Test
    void readsATimeOfTheLabsClock() {
        assertThat(FormTimes.at(errors, "2027-03-28", "from", " 03:00", ZONE))
                .isEqualTo(Instant.parse("2027-03-28T01:00:00Z"));
        assertThat(errors).isEmpty();
    }

    @Test
    void refusesATimeThatTheClocksLeaveOut() {
        assertThat(FormTimes.at(errors, "2027-03-28", "from", "02:30", ZONE)).isNull();
        assertThat(errors).containsOnlyKeys("from");
    }

    @Test
    void takesTheEarlierOfATimeThatComesTwice() {
        assertThat(FormTimes.at(errors, "2026-10-25", "from", "02:30", ZONE))
                .isEqualTo(Instant.parse("2026-10-25T00:30:00Z"));
    }

    @Test
    void namesTheFieldThatCannotBeRead() {
        assertThat(FormTimes.at(errors, "soon", "until", "noon", ZONE)).isNull();
        assertThat(errors).containsOnlyKeys("day", "until");
    }

    @Test
    void letsNobodyWaitForATimeThatDoesNotExist() {
        var form = new WaitForm("", "", "2027-03-28", "02:30", "04:00", "");

        assertThat(form.read(errors, ZONE, PersonId.next())).isEmpty();
        assertThat(errors).containsOnlyKeys("from");
    }
}
