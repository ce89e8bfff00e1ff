package org.standclear.run.records;

import java.time.Instant;
import java.util.Arrays;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import org.standclear.booking.Booking;
import org.standclear.booking.Bookings;
import org.standclear.people.Authorisations;
import org.standclear.people.Duty;
import org.standclear.people.DutyRoster;
import org.standclear.people.People;
import org.standclear.platform.ids.BookingId;
import org.standclear.platform.ids.PersonId;
import org.standclear.run.Run;
import org.standclear.run.RunEvent.Kind;
import org.standclear.run.RunLog.Logged;
import org.standclear.run.RunLog.Witness;
import org.standclear.run.RunState;
import org.standclear.signoff.Part;
import org.standclear.signoff.Release;
import org.standclear.signoff.Releases;

/** A first run counts as run through only when a technician or an instructor says that they watched it. */
@Component
class Watching {

    private final Releases releases;
    private final EventWriter events;
    private final Witnesses witnesses;
    private final People people;
    private final Bookings bookings;
    private final RunRows runs;
    private final DutyRoster duty;
    private final Authorisations authorisations;

    Watching(
            Releases releases,
            EventWriter events,
            Witnesses witnesses,
            People people,
            Bookings bookings,
            RunRows runs,
            DutyRoster duty,
            Authorisations authorisations) {
        this.releases = releases;
        this.events = events;
        this.witnesses = witnesses;
        this.people = people;
        this.bookings = bookings;
        this.runs = runs;
        this.duty = duty;
        this.authorisations = authorisations;
    }

    /** The booking is locked. Whoever says so is at the cell as a releaser is, and the run goes on. */
    Logged watched(Booking booking, @Nullable Run run, Witness by, Instant now) {
        Optional<Logged> no = witnesses.refusal(by).or(() -> notThere(booking, run, by.signer(), now));
        if (no.isPresent()) {
            return no.get();
        }
        Release release = releases.latest(booking.id()).orElse(null);
        boolean goesOn = run != null && (run.state() == RunState.RUNNING || run.state() == RunState.STOPPED);
        if (run == null || !goesOn || release == null || release.usedAt() == null) {
            return new Logged.Refused(
                    "state", "No run goes on here that could be watched; it is said between its start and its end.");
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
        if (events.passesSinceStart(booking.id()) > 0) {
            releases.ranThrough(booking.id());
        }
        return kept;
    }

    /** Who had a part in the run did not watch it, and nobody watches two cells. */
    private Optional<Logged> notThere(Booking booking, @Nullable Run run, PersonId signer, Instant now) {
        boolean part = booking.involves(signer)
                || (run != null
                        && (run.inPart(Part.OPERATOR).contains(signer)
                                || run.inPart(Part.ATTENDANT).contains(signer)));
        if (part) {
            return refused("Who operates or attends watches no first run for the record.");
        }
        String name = people.printedName(signer);
        if (!duty.onDuty(signer, now)) {
            return refused(name + " is not on duty now; who watches a first run is at the cell.");
        }
        if (runs.open().stream()
                .filter(other -> other.state() == RunState.RUNNING || other.state() == RunState.STOPPED)
                .filter(other -> !other.booking().equals(booking.id()))
                .anyMatch(other -> bookings.find(other.booking())
                        .filter(one -> one.involves(signer))
                        .isPresent())) {
            return refused(name + " is in a run on another cell now; nobody watches two cells.");
        }
        boolean authorised =
                Arrays.stream(Duty.values()).anyMatch(one -> authorisations.holds(signer, one, booking.cell(), now));
        return authorised
                ? Optional.empty()
                : refused(name + " is not authorised on this cell, and so watches no first run on it.");
    }

    private static Optional<Logged> refused(String says) {
        return Optional.of(new Logged.Refused("signer", says));
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
                ? " The first run was not watched: the next one is a first run again."
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
