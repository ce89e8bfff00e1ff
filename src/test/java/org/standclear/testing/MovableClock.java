package org.standclear.testing;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;

/** A clock that stands still until a test moves it. */
public final class MovableClock extends Clock {

    /** Where the clock stands when a test begins: a Wednesday in term, in the morning. */
    public static final Instant START = Instant.parse("2026-03-11T09:00:00Z");

    private final Hand hand;
    private final ZoneId zone;

    /** A clock in UTC that stands at {@link #START}. */
    public MovableClock() {
        this(new Hand(), ZoneOffset.UTC);
    }

    private MovableClock(Hand hand, ZoneId zone) {
        this.hand = hand;
        this.zone = zone;
    }

    /** Puts the clock to an instant, earlier or later. */
    public void moveTo(Instant instant) {
        hand.at = instant;
    }

    /** Moves the clock forward, or backward by a negative duration. */
    public void moveBy(Duration duration) {
        hand.moveBy(duration);
    }

    /** Puts the clock back to {@link #START}. */
    public void moveToStart() {
        hand.at = START;
    }

    @Override
    public Instant instant() {
        return hand.at;
    }

    @Override
    public ZoneId getZone() {
        return zone;
    }

    /** The same clock told in another zone: moving one moves both. */
    @Override
    public Clock withZone(ZoneId other) {
        return new MovableClock(hand, other);
    }

    /** What all zones of one clock share. */
    private static final class Hand {

        private volatile Instant at = START;

        private synchronized void moveBy(Duration duration) {
            at = at.plus(duration);
        }
    }
}
