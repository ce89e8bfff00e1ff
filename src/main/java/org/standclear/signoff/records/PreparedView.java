package org.standclear.signoff.records;

import java.time.Clock;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import org.standclear.booking.Booking;
import org.standclear.booking.BookingState;
import org.standclear.cell.Cell;
import org.standclear.check.ProgramChecks;
import org.standclear.check.StoredAnswer;
import org.standclear.program.Revision;
import org.standclear.signoff.Preparation.Prepared;
import org.standclear.signoff.Waiver;
import org.standclear.signoff.rules.AnswerLine;

/** Puts together where a booking's preparation stands. */
@Component
class PreparedView {

    private final Upkeep upkeep;
    private final GateFacts gates;
    private final ProgramChecks checks;
    private final EventRows events;
    private final WaiverRows waivers;
    private final Clock clock;

    PreparedView(
            Upkeep upkeep, GateFacts gates, ProgramChecks checks, EventRows events, WaiverRows waivers, Clock clock) {
        this.upkeep = upkeep;
        this.gates = gates;
        this.checks = checks;
        this.events = events;
        this.waivers = waivers;
        this.clock = clock;
    }

    Prepared of(Booking booking, Cell cell) {
        Revision revision = upkeep.revision(booking);
        StoredAnswer answer = gates.answer(booking).orElse(null);
        return new Prepared(
                booking,
                revision,
                answer,
                says(booking, cell, revision, answer),
                events.news(booking.id()),
                waiver(booking, answer),
                answer == null ? List.of() : AnswerLine.notChecked(answer));
    }

    /** The one that stands, or that the run which goes on used up. */
    private Optional<Waiver> waiver(Booking booking, @Nullable StoredAnswer answer) {
        boolean runs = booking.state().ordinal() >= BookingState.RUNNING.ordinal()
                && booking.state().ordinal() <= BookingState.CLOSED_OUT.ordinal();
        return waivers.of(booking.id()).stream()
                .filter(waiver -> answer != null && waiver.answer().equals(answer.id()))
                .filter(waiver -> waiver.standsAt(clock.instant()) || runs && waiver.usedAt() != null)
                .findFirst();
    }

    private String says(Booking booking, Cell cell, @Nullable Revision revision, @Nullable StoredAnswer answer) {
        if (revision == null) {
            return "No program is attached to the booking yet.";
        }
        if (answer != null) {
            return AnswerLine.of(answer, cell);
        }
        ProgramChecks.Outcome asked = checks.check(revision.id(), cell.id(), booking.course(), booking.operator());
        if (asked instanceof ProgramChecks.Outcome.Unreadable unreadable) {
            return unreadable.says();
        }
        return asked instanceof ProgramChecks.Outcome.Busy busy
                ? busy.says()
                : "The program has no answer of the check yet.";
    }
}
