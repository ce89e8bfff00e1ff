package org.standclear.demo;

import java.time.Duration;
import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.standclear.booking.Slot;

/**
 * Picks the slots in which something stands ready to be played when the demo starts: on each cell the one that runs now,
 * if enough of it is left, else the next if its check-in is open already.
 */
record NowSlots(Instant start) {

    /** Enough for the bench list, a start and a run. */
    private static final Duration ENOUGH = Duration.ofMinutes(8);

    /** Check-in opens this long before a slot. */
    private static final Duration OPENS = Duration.ofMinutes(10);

    /** One slot a cell at most, the one with the most time left first. */
    List<Slot> of(Stream<List<Slot>> slotsOfCells) {
        return slotsOfCells
                .map(this::best)
                .filter(Objects::nonNull)
                .map(Objects::requireNonNull)
                .sorted(Comparator.comparing(Slot::end).reversed())
                .sorted(Comparator.comparing(this::isAhead))
                .toList();
    }

    private @Nullable Slot best(List<Slot> slots) {
        return Stream.concat(
                        slots.stream()
                                .filter(slot -> !isAhead(slot) && slot.end().isAfter(start.plus(ENOUGH))),
                        slots.stream()
                                .filter(slot -> isAhead(slot) && !slot.start().isAfter(start.plus(OPENS))))
                .findFirst()
                .orElse(null);
    }

    boolean isAhead(Slot slot) {
        return slot.start().isAfter(start);
    }
}
