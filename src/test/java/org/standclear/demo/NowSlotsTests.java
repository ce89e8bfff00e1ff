package org.standclear.demo;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.standclear.booking.Slot;
import org.standclear.platform.ids.CellId;

class NowSlotsTests {

    private static final Instant NOON = Instant.parse("2026-03-11T12:00:00Z");
    private static final CellId AVOCET = CellId.next();
    private static final CellId BITTERN = CellId.next();

    /** The slots from an hour before noon on, the first that many minutes after the half hour. */
    private static List<Slot> grid(CellId cell, int offset) {
        return Stream.iterate(0, i -> i + 1)
                .limit(6)
                .map(i -> NOON.plus(Duration.ofMinutes(offset - 60L + 30L * i)))
                .map(start -> new Slot(cell, start, start.plus(Duration.ofMinutes(30))))
                .toList();
    }

    private static List<Slot> at(int minute) {
        return new NowSlots(NOON.plus(Duration.ofMinutes(minute))).of(Stream.of(grid(AVOCET, 0), grid(BITTERN, 7)));
    }

    @Test
    void takesTheRunningSlotWithTheMostTimeLeftFirst() {
        assertThat(at(3)).extracting(Slot::start).containsExactly(NOON, NOON.plusSeconds(420));
        assertThat(at(10)).extracting(Slot::cell).containsExactly(BITTERN, AVOCET);
        assertThat(at(10)).extracting(Slot::start).containsExactly(NOON.plusSeconds(420), NOON);
    }

    @Test
    void takesTheNextSlotWhereLittleIsLeft() {
        // at 12:25 Avocet's slot has five minutes, Bittern's twelve
        assertThat(at(25)).extracting(Slot::start).containsExactly(NOON.plusSeconds(420), NOON.plusSeconds(1800));
        // at 12:30 Avocet's next has begun, and Bittern's can be checked in to
        assertThat(at(30)).extracting(Slot::start).containsExactly(NOON.plusSeconds(1800), NOON.plusSeconds(2220));
    }

    @Test
    void hasNothingWhereTheLabIsClosed() {
        assertThat(at(600)).isEmpty();
    }
}
