package org.standclear.signoff.records;

import java.time.Clock;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.standclear.booking.Booking;
import org.standclear.booking.BookingState;
import org.standclear.booking.Bookings;
import org.standclear.booking.Bookings.Transition;
import org.standclear.platform.ids.BookingId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.ids.RevisionId;
import org.standclear.platform.time.SqlTime;
import org.standclear.platform.web.NotFoundException;
import org.standclear.program.Programs;
import org.standclear.program.Revision;
import org.standclear.signoff.LapseRule;
import org.standclear.signoff.Preparation;
import org.standclear.signoff.Release;
import org.standclear.signoff.rules.Lapses;

/** Attaches programs under the locks of booking and cell. */
@Service
class JdbcPreparation implements Preparation {

    private final Bookings bookings;
    private final Programs programs;
    private final Upkeep upkeep;
    private final PreparedView view;
    private final ReleaseRows releases;
    private final SignoffTrail trail;
    private final Clock clock;

    JdbcPreparation(
            Bookings bookings,
            Programs programs,
            Upkeep upkeep,
            PreparedView view,
            ReleaseRows releases,
            SignoffTrail trail,
            Clock clock) {
        this.bookings = bookings;
        this.programs = programs;
        this.upkeep = upkeep;
        this.view = view;
        this.releases = releases;
        this.trail = trail;
        this.clock = clock;
    }

    @Override
    @Transactional
    public Attached attach(BookingId id, RevisionId revisionId, PersonId by) {
        Instant now = now();
        Upkeep.Current current = upkeep.lock(id, now);
        Booking booking = current.booking();
        Revision revision = programs.find(revisionId)
                .filter(found -> mayAttach(found, booking, by))
                .orElseThrow(() -> new NotFoundException("program"));
        if (revisionId.equals(booking.revision())) {
            return new Attached.Kept(view.of(booking, current.cell()));
        }
        takeBackRelease(booking, revision, by, now);
        if (bookings.attachRevision(id, revisionId, by) instanceof Transition.Refused refused) {
            return new Attached.Refused("state", refused.says());
        }
        trail.attached(
                booking,
                by,
                "\"" + revision.title() + "\" revision " + revision.number() + ", fingerprint ending in "
                        + revision.fingerprintEnd());
        Upkeep.Current after = upkeep.lock(id, now);
        return new Attached.Kept(view.of(after.booking(), after.cell()));
    }

    private void takeBackRelease(Booking booking, Revision revision, PersonId by, Instant now) {
        if (booking.state() == BookingState.RELEASED) {
            Release release = releases.latest(booking.id()).orElseThrow();
            String what = revision.sha256().equals(release.programSha256())
                    ? "The declaration changed."
                    : "The program file changed.";
            upkeep.lapsed(
                    booking,
                    release,
                    new Lapses.Found(
                            LapseRule.FILE_CHANGED,
                            what + " Revision " + revision.number() + " is on the booking now."),
                    by,
                    now);
        }
    }

    @Override
    @Transactional(readOnly = true)
    public List<Revision> choices(BookingId id, PersonId by) {
        Booking booking = bookings.find(id).orElseThrow(() -> new NotFoundException("booking"));
        List<Revision> choices = new ArrayList<>(programs.latestOf(by));
        if (!by.equals(booking.operator())) {
            choices.addAll(programs.latestOf(booking.operator()));
        }
        return choices;
    }

    private static boolean mayAttach(Revision revision, Booking booking, PersonId by) {
        return revision.author().equals(by) || revision.author().equals(booking.operator());
    }

    @Override
    @Transactional
    public Prepared look(BookingId id) {
        Upkeep.Current current = upkeep.lock(id, now());
        return view.of(current.booking(), current.cell());
    }

    private Instant now() {
        return SqlTime.stored(clock.instant());
    }
}
