package org.standclear.signoff.records;

import java.time.Instant;
import java.util.Optional;
import org.springframework.stereotype.Component;
import org.standclear.booking.Booking;
import org.standclear.signoff.Lapse;
import org.standclear.signoff.Release;
import org.standclear.signoff.rules.LapseQuestion;
import org.standclear.signoff.rules.Lapses;

/** Lets the attendant's signature alone lapse: the release waits for another one's, no longer than it would have waited. */
@Component
class Suspensions {

    private final HandoverRows handovers;
    private final EventRows events;
    private final SignoffTrail trail;

    Suspensions(HandoverRows handovers, EventRows events, SignoffTrail trail) {
        this.handovers = handovers;
        this.events = events;
        this.trail = trail;
    }

    void check(Booking booking, LapseQuestion question, Instant now) {
        Release release = question.release();
        Optional<Lapses.Found> found = release.holds() ? Lapses.suspends(question) : Optional.empty();
        found.filter(lapse -> handovers.suspend(release, lapse, now)).ifPresent(lapse -> {
            events.addLapse(new Lapse(
                    booking.id(), release.id(), "attendant", lapse.rule().code(), lapse.because(), now));
            trail.suspended(booking, release, lapse.rule(), lapse.because());
        });
    }
}
