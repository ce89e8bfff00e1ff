package org.standclear.platform.strip;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.time.Instant;
import java.time.ZoneId;
import org.junit.jupiter.api.Test;

/** Where instants stand on a strip. */
class StripScaleTests {

    private static final Instant EIGHT = Instant.parse("2026-11-26T08:00:00Z");
    private static final Instant SIX = Instant.parse("2026-11-26T18:00:00Z");
    private static final StripScale DAY = new StripScale(EIGHT, SIX, ZoneId.of("UTC"));

    @Test
    void placesInstantsInPercent() {
        assertThat(DAY.place(EIGHT)).isEqualTo("0.000%");
        assertThat(DAY.place(Instant.parse("2026-11-26T13:00:00Z"))).isEqualTo("50.000%");
        assertThat(DAY.width(EIGHT, Instant.parse("2026-11-26T08:30:00Z"))).isEqualTo("5.000%");
    }

    @Test
    void cutsOffWhatLiesBeyondTheEnds() {
        Instant before = EIGHT.minusSeconds(3600);

        assertThat(DAY.place(before)).isEqualTo("0.000%");
        assertThat(DAY.width(before, SIX.plusSeconds(1))).isEqualTo("100.000%");
        assertThat(DAY.width(before, before.plusSeconds(60))).isEqualTo("0.000%");
        assertThat(DAY.placeWithin(before)).isNull();
        assertThat(DAY.placeWithin(SIX)).isEqualTo("100.000%");
    }

    @Test
    void marksFullHoursOnly() {
        StripScale odd = new StripScale(EIGHT.plusSeconds(60), SIX, ZoneId.of("UTC"));

        assertThat(DAY.hours()).hasSize(11).first().isEqualTo(new HourMark("0.000%", "08"));
        assertThat(odd.hours()).hasSize(10).extracting(HourMark::hour).startsWith("09");
    }

    /** Clocks in that zone went from 03:00 back to 02:00 on 2026-10-25 (IANA time zone data, Europe/Berlin; grade P). */
    @Test
    void marksTheHourThatComesTwice() {
        StripScale night = new StripScale(
                Instant.parse("2026-10-24T23:00:00Z"),
                Instant.parse("2026-10-25T02:00:00Z"),
                ZoneId.of("Europe/Berlin"));

        assertThat(night.hours()).extracting(HourMark::hour).containsExactly("01", "02", "02", "03");
    }

    @Test
    void refusesAStripWithoutLength() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> new StripScale(EIGHT, EIGHT, ZoneId.of("UTC")))
                .withMessageContaining("an end after its start");
    }

    @Test
    void shortensNamesOnlyWhereThereIsNoRoom() {
        StripBlock narrow = block("5.000%", "booked");

        assertThat(narrow.firstShown()).isEqualTo("Noor");
        assertThat(narrow.says()).isEqualTo("12:30-13:00: Noor Candlewick, Mateo Ironbark, booked");
        assertThat(block("20.000%", "booked").firstShown()).isEqualTo("Noor Candlewick");
        assertThat(block("3.000%", "booked").firstShown()).isEqualTo("No\u2026");
    }

    @Test
    void keepsTheHoursWholeAtTheEndsAndUnderTheWordForNow() {
        assertThat(DAY.hours())
                .extracting(HourMark::anchor)
                .startsWith("start", "middle")
                .endsWith("middle", "end");
        assertThat(new HourMark("50.000%", "13").coveredBy("51.000%")).isTrue();
        assertThat(new HourMark("50.000%", "13").coveredBy("55.000%")).isFalse();
        assertThat(new HourMark("50.000%", "13").coveredBy(null)).isFalse();
    }

    private static StripBlock block(String width, String state) {
        return new StripBlock(
                "0.000%", width, "12:30-13:00", "Noor Candlewick", "Mateo Ironbark", state, state, null, false);
    }
}
