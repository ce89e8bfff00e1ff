package org.standclear.testing;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import org.standclear.platform.time.ClockHands;

/** A clock that stands still until a test moves it. */
public final class MovableClock extends Clock implements ClockHands {

    /** Where the clock stands when a test begins: a Wednesday in term, in the morning. */
    public static final Instant START = Instant.parse("2026-03-11T09:00:00Z");

    private final Hand hand;
    private final ZoneId zone;

    /** A clock in UTC that stands at {@link #START}. */
    public MovableClock() {
        this(START);
    }

    /** A clock in UTC that stands at an instant of its own, and goes back there before every test. */
    public MovableClock(Instant start) {
        this(new Hand(start), ZoneOffset.UTC);
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

    /** Puts the clock back to where it stood at first. */
    public void moveToStart() {
        hand.at = hand.start;
    }

    @Override
    public void standAt(Instant instant) {
        moveTo(instant);
    }

    @Override
    public void runOn() {
        // only tests move this clock
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

        private final Instant start;
        private volatile Instant at;

        private Hand(Instant start) {
            this.start = start;
            this.at = start;
        }

        private synchronized void moveBy(Duration duration) {
            at = at.plus(duration);
        }
    }
}
