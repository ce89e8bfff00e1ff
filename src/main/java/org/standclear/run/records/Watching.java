package org.standclear.run.records;

import java.time.Instant;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import org.standclear.booking.Booking;
import org.standclear.people.People;
import org.standclear.platform.ids.BookingId;
import org.standclear.run.Run;
import org.standclear.run.RunEvent.Kind;
import org.standclear.run.RunLog.Logged;
import org.standclear.run.RunLog.Witness;
import org.standclear.run.RunState;
import org.standclear.signoff.Release;
import org.standclear.signoff.Releases;

/** A first run counts as run through only when a technician or an instructor says that they watched it. */
@Component
class Watching {

    private final Releases releases;
    private final EventWriter events;
    private final Witnesses witnesses;
    private final People people;

    Watching(Releases releases, EventWriter events, Witnesses witnesses, People people) {
        this.releases = releases;
        this.events = events;
        this.witnesses = witnesses;
        this.people = people;
    }

    /** The booking is locked. */
    Logged watched(Booking booking, @Nullable Run run, Witness by, Instant now) {
        Optional<Logged> notStaff = witnesses.refusal(by);
        if (notStaff.isPresent()) {
            return notStaff.get();
        }
        if (booking.involves(by.signer())) {
            return new Logged.Refused("signer", "Who operates or attends watches no first run for the record.");
        }
        Release release = releases.latest(booking.id()).orElse(null);
        if (run == null || run.state() == RunState.CLOSED_OUT || release == null || release.usedAt() == null) {
            return new Logged.Refused("state", "No run goes on here that could be watched.");
        }
        if (!release.firstRun() || events.isWatched(booking.id())) {
            return new Logged.Refused(
                    "state", release.firstRun() ? "It is on record already." : "This is no first run.");
        }
        Logged kept = new Logged.Kept(events.add(
                booking,
                run,
                Kind.WATCHED,
                null,
                "",
                people.printedName(by.signer()) + " watched the first run.",
                by.signer(),
                now));
        if (events.passesSinceStart(booking.id()) > 0 || run.state() == RunState.FINISHED && run.passes() > 0) {
            releases.ranThrough(booking.id());
        }
        return kept;
    }

    /** A pass came to its end: of a first run only once it was watched. */
    void ranThrough(BookingId booking) {
        if (!isFirst(booking) || events.isWatched(booking)) {
            releases.ranThrough(booking);
        }
    }

    /** What stays on record when a first run ends unwatched. */
    String unwatched(BookingId booking) {
        return isFirst(booking) && !events.isWatched(booking)
                ? " The first run was not watched so far: until it is, the next one is a first run again."
                : "";
    }

    private boolean isFirst(BookingId booking) {
        return releases.latest(booking)
                .filter(release -> release.usedAt() != null && release.firstRun())
                .isPresent();
    }

    /** Says so when a pass is one more than was declared and released. */
    String overLimit(BookingId booking, int passes) {
        Integer limit = releases.latest(booking).map(Release::passLimit).orElse(null);
        return limit == null || passes <= limit
                ? ""
                : "More passes than declared: " + passes + " since the start, " + limit + " declared.";
    }
}
