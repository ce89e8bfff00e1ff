package org.standclear.signoff.records;

import java.time.Instant;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import org.standclear.booking.Booking;
import org.standclear.booking.BookingState;
import org.standclear.booking.Bookings;
import org.standclear.booking.Bookings.Transition;
import org.standclear.cell.Cell;
import org.standclear.cell.Cells;
import org.standclear.check.ProgramChecks;
import org.standclear.check.StoredAnswer;
import org.standclear.platform.ids.BookingId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.ids.RevisionId;
import org.standclear.program.Programs;
import org.standclear.program.Revision;
import org.standclear.signoff.Lapse;
import org.standclear.signoff.LapseRule;
import org.standclear.signoff.Release;
import org.standclear.signoff.Sheet;
import org.standclear.signoff.SignoffList;
import org.standclear.signoff.rules.AnswerLine;
import org.standclear.signoff.rules.LapseQuestion;
import org.standclear.signoff.rules.Lapses;

/**
 * Brings a booking up to date with the facts: releases and checks lapse, checks are asked anew, a signed session list
 * makes it ready. Callers hold the locks of booking and cell.
 */
@Component
class Upkeep {

    private final Bookings bookings;
    private final Cells cells;
    private final Programs programs;
    private final ProgramChecks checks;
    private final GateFacts gates;
    private final LapseFacts lapseFacts;
    private final EventRows events;
    private final SheetRows sheets;
    private final ReleaseRows releases;
    private final WaiverRows waivers;
    private final SheetVoids voids;
    private final Suspensions suspensions;
    private final SignoffTrail trail;

    Upkeep(
            Bookings bookings,
            Cells cells,
            Programs programs,
            ProgramChecks checks,
            GateFacts gates,
            LapseFacts lapseFacts,
            EventRows events,
            SheetRows sheets,
            ReleaseRows releases,
            WaiverRows waivers,
            SheetVoids voids,
            Suspensions suspensions,
            SignoffTrail trail) {
        this.bookings = bookings;
        this.cells = cells;
        this.programs = programs;
        this.checks = checks;
        this.gates = gates;
        this.lapseFacts = lapseFacts;
        this.events = events;
        this.sheets = sheets;
        this.releases = releases;
        this.waivers = waivers;
        this.voids = voids;
        this.suspensions = suspensions;
        this.trail = trail;
    }

    /** A booking and its cell, locked and up to date. */
    record Current(Booking booking, Cell cell) {}

    /** Locks booking and cell, in this order, and brings the booking up to date. */
    Current lock(BookingId id, Instant now) {
        Booking booking = bookings.lock(id);
        Cell cell = cells.lock(booking.cell());
        return bring(booking, cell, now);
    }

    Current bring(Booking locked, Cell cell, Instant now) {
        Booking booking = releaseHolds(locked, cell, now);
        booking = checkHolds(booking, cell, now);
        booking = checked(booking, cell, now);
        voids.check(booking, cell, now);
        booking = ready(booking, cell, now);
        return new Current(booking, cell);
    }

    private Booking releaseHolds(Booking booking, Cell cell, Instant now) {
        if (booking.state() != BookingState.RELEASED) {
            return booking;
        }
        Release waiting = releases.latest(booking.id()).filter(Release::waits).orElse(null);
        if (waiting == null) {
            return booking;
        }
        LapseQuestion question = lapseFacts.question(waiting, booking, cell, now);
        Optional<Lapses.Found> lapse = Lapses.first(question);
        if (lapse.isPresent()) {
            return lapsed(booking, waiting, lapse.get(), null, now);
        }
        suspensions.check(booking, question, now);
        return booking;
    }

    /** Lapses a waiting release and takes the booking as far back as the rule says. */
    Booking lapsed(Booking booking, Release release, Lapses.Found found, @Nullable PersonId by, Instant now) {
        keepLapse(booking, release, found, by, now);
        // whoever came to the e-stop since has signed neither list
        boolean sessionHolds = release.attendant().equals(booking.attendant());
        return moved(
                found.rule().after() == LapseRule.After.READY && sessionHolds
                        ? bookings.backToReady(booking.id(), found.because())
                        : bookings.backToBooked(booking.id(), found.because()));
    }

    void keepLapse(Booking booking, Release release, Lapses.Found found, @Nullable PersonId by, Instant now) {
        if (releases.lapse(release.id(), found.rule(), found.because(), now)) {
            events.addLapse(new Lapse(
                    booking.id(), release.id(), "release", found.rule().code(), found.because(), now));
            trail.releaseLapsed(booking, release, found.rule(), found.because(), by);
        }
    }

    private Booking checkHolds(Booking booking, Cell cell, Instant now) {
        if (booking.state() != BookingState.CHECKED && booking.state() != BookingState.READY) {
            return booking;
        }
        String because = checkLapsed(booking, cell, now);
        if (because == null) {
            return booking;
        }
        events.addLapse(new Lapse(booking.id(), null, "check", "check-lapsed", because, now));
        trail.checkLapsed(booking, because);
        return moved(bookings.backToBooked(booking.id(), because));
    }

    private @Nullable String checkLapsed(Booking booking, Cell cell, Instant now) {
        EventRows.Preparation last = events.lastCheck(booking.id()).orElse(null);
        if (last == null || !last.revision().equals(booking.revision())) {
            return "The program on the booking changed.";
        }
        if (last.cellVersion() != cell.currentVersion()) {
            return cell.name() + " moved from version " + last.cellVersion() + " to version " + cell.currentVersion()
                    + ".";
        }
        if (!last.isAbout(last.revision(), cell.currentVersion())) {
            return "The rules of the check changed since it was answered.";
        }
        if (!checks.isInForce(last.answer(), booking.course(), booking.operator())) {
            return "The limits of the course changed since the check was answered, or the cell's phrasebook.";
        }
        return last.within() || isWaived(booking, last, now)
                ? null
                : "The waiver no longer stands: it is used up, taken back or expired.";
    }

    private boolean isWaived(Booking booking, EventRows.Preparation check, Instant now) {
        return waivers.standing(booking.id(), check.answer(), now).isPresent();
    }

    /** Asks the check when the program, the cell's version or the rules are new to the booking. */
    private Booking checked(Booking booking, Cell cell, Instant now) {
        RevisionId revision = booking.revision();
        if (booking.state() != BookingState.BOOKED || revision == null) {
            return booking;
        }
        Optional<EventRows.Preparation> last = events.lastCheck(booking.id())
                .filter(check -> check.isAbout(revision, cell.currentVersion()))
                .filter(check -> checks.isInForce(check.answer(), booking.course(), booking.operator()));
        if (last.filter(check -> !check.within()).isPresent()) {
            return isWaived(booking, last.orElseThrow(), now)
                    ? moved(bookings.markChecked(booking.id(), booking.operator()))
                    : booking;
        }
        EventRows.Grounds grounds = events.groundsOf(booking.id());
        if (!(checks.check(revision, cell.id(), booking.course(), booking.operator())
                instanceof ProgramChecks.Outcome.Answered answered)) {
            return booking;
        }
        StoredAnswer answer = answered.answer();
        events.addCheck(booking.id(), answer, grounds, now);
        trail.checked(booking, answer, AnswerLine.of(answer, cell));
        return answer.verdict() == StoredAnswer.Verdict.WITHIN
                ? moved(bookings.markChecked(booking.id(), booking.operator()))
                : booking;
    }

    private Booking ready(Booking booking, Cell cell, Instant now) {
        Sheet open = sheets.open(booking.id()).orElse(null);
        boolean signed = open != null
                && open.list() == SignoffList.SESSION
                && open.next().isEmpty();
        if (open == null
                || !signed
                || booking.state() != BookingState.CHECKED
                || !gates.obstacles(booking, cell, now).isEmpty()) {
            return booking;
        }
        sheets.close(open.id(), Sheet.Outcome.DONE, "", now);
        trail.ready(booking);
        return moved(bookings.markReady(booking.id(), booking.operator()));
    }

    /** The revision on the booking. */
    @Nullable
    Revision revision(Booking booking) {
        RevisionId revision = booking.revision();
        return revision == null ? null : programs.find(revision).orElse(null);
    }

    static Booking moved(Transition transition) {
        if (transition instanceof Transition.Moved moved) {
            return moved.booking();
        }
        throw new IllegalStateException(((Transition.Refused) transition).says());
    }
}
