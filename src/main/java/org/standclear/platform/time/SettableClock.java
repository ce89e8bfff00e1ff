package org.standclear.platform.time;

import java.time.Clock;
import java.time.Instant;
import java.time.ZoneId;
import java.util.concurrent.atomic.AtomicReference;
import org.jspecify.annotations.Nullable;

/** The machine's clock, which can be made to stand elsewhere for a while. */
final class SettableClock extends Clock implements ClockHands {

    private final Clock machine;
    private final AtomicReference<@Nullable Instant> standing;

    SettableClock(Clock machine) {
        this(machine, new AtomicReference<>());
    }

    private SettableClock(Clock machine, AtomicReference<@Nullable Instant> standing) {
        this.machine = machine;
        this.standing = standing;
    }

    @Override
    public void standAt(Instant instant) {
        standing.set(instant);
    }

    @Override
    public void runOn() {
        standing.set(null);
    }

    @Override
    public Instant instant() {
        Instant set = standing.get();
        return set == null ? machine.instant() : set;
    }

    @Override
    public ZoneId getZone() {
        return machine.getZone();
    }

    @Override
    public Clock withZone(ZoneId zone) {
        return new SettableClock(machine.withZone(zone), standing);
    }
}
