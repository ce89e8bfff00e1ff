package org.standclear.signoff.records;

import java.time.Instant;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.springframework.stereotype.Component;
import org.standclear.booking.Booking;
import org.standclear.booking.BookingState;
import org.standclear.booking.Bookings;
import org.standclear.booking.Bookings.Transition;
import org.standclear.people.People;
import org.standclear.platform.ids.PersonId;
import org.standclear.signoff.AttendantChanges;
import org.standclear.signoff.LapseRule;
import org.standclear.signoff.Obstacle;
import org.standclear.signoff.Release;
import org.standclear.signoff.Sheet;
import org.standclear.signoff.Turn;
import org.standclear.signoff.rules.Lapses;

/** What a signature on the handover list does. */
@Component
class TakingOver {

    private final Bookings bookings;
    private final ReleaseRows releases;
    private final HandoverRows handovers;
    private final SheetRows sheets;
    private final OneStop oneStop;
    private final Turns turns;
    private final People people;
    private final List<AttendantChanges> told;
    private final SignoffTrail trail;

    TakingOver(
            Bookings bookings,
            ReleaseRows releases,
            HandoverRows handovers,
            SheetRows sheets,
            OneStop oneStop,
            Turns turns,
            People people,
            List<AttendantChanges> told,
            SignoffTrail trail) {
        this.bookings = bookings;
        this.releases = releases;
        this.handovers = handovers;
        this.sheets = sheets;
        this.oneStop = oneStop;
        this.turns = turns;
        this.people = people;
        this.told = told;
        this.trail = trail;
    }

    /** Why this person signs for no e-stop now: a turn that is over, another cell, another part; empty when nothing is. */
    List<Obstacle> refusals(PersonId next, Booking booking, Instant now) {
        Turn turn = turns.of(next, now);
        if (turn.over()) {
            String name = people.printedName(next);
            return List.of(new Obstacle(
                    "attendant-turn-over",
                    turn.told()
                            ? name + " has been at the e-stop for "
                                    + turn.soFar().toMinutes() + " min; a turn is "
                                    + turn.limit().toMinutes() + " min."
                            : "How long " + name
                                    + " has been at another e-stop can no longer be told: the clock was set" + " back.",
                    "Somebody else takes the next turn: swap the attendant. " + name + " may again after a rest."));
        }
        String elsewhere = oneStop.elsewhere(next, booking, now);
        return elsewhere == null
                ? List.of()
                : List.of(new Obstacle(
                        "attendant-elsewhere",
                        people.printedName(next) + " is in a run on " + elsewhere + " now.",
                        "One person, one e-stop: choose somebody else."));
    }

    /** Why the person takes over no e-stop of this release. */
    Optional<Obstacle> otherPart(PersonId next, Release release) {
        if (next.equals(release.releaser())) {
            return Optional.of(new Obstacle(
                    "attendant-is-releaser",
                    "Who released the run does not attend its e-stop.",
                    "Choose somebody else."));
        }
        return next.equals(release.operator())
                ? Optional.of(new Obstacle(
                        "attendant-is-operator", "The operator never attends the own run.", "Choose somebody else."))
                : Optional.empty();
    }

    /** The release that the handover list is about, as it is now. */
    Release release(Sheet sheet) {
        return releases.latest(sheet.booking()).orElseThrow();
    }

    /** Takes over: in a run the booking changes hands now, before one it has already. */
    List<Obstacle> take(Sheet sheet, Booking booking, Instant now) {
        Release release = release(sheet);
        PersonId before = release.attendant();
        PersonId next = sheet.attendant();
        boolean runs = booking.state() == BookingState.RUNNING;
        if (runs) {
            Transition moved = bookings.handOver(booking.id(), next, next);
            if (moved instanceof Transition.Refused refused) {
                return List.of(new Obstacle("attendant-cannot", refused.says(), ""));
            }
            handovers.left(
                    release, new Lapses.Found(LapseRule.ATTENDANT_SWAPPED, "Handed over while the run went on."), now);
        }
        oneStop.free(next, booking, now);
        handovers.taken(release, sheet.id(), next, now);
        sheets.close(sheet.id(), Sheet.Outcome.DONE, "", now);
        trail.handedOver(booking, release, before, next);
        if (runs) {
            Objects.requireNonNull(told).forEach(one -> one.handedOver(booking.id(), before, next, now));
        }
        return List.of();
    }
}
