package org.standclear.core.allocation;

/** A place that turns of a kind could have, in the numbers of a {@link Board}. */
final class Seat {

    final Place place;
    final int[] slots;
    /** The people's time that it takes: elementary spans from this one until that. */
    final int from;

    final int until;
    /** Who could attend a turn without a partner, those first who have no turns of their own. */
    final int[] pool;
    /** Wishes passed over. */
    final int passed;
    /** Whether the turn is booked elsewhere. */
    final boolean moved;

    Seat(Turn turn, Place place, int from, int until, int[] pool) {
        this.place = place;
        this.slots = place.slots().stream().mapToInt(Integer::intValue).toArray();
        this.from = from;
        this.until = until;
        this.pool = pool;
        this.passed = turn.times().wishesPassed(place.cell(), place.span());
        this.moved = turn.isMovedTo(place.cell(), place.span());
    }
}
