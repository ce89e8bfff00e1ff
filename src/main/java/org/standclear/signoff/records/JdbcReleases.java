package org.standclear.signoff.records;

import java.time.Clock;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.standclear.booking.Booking;
import org.standclear.booking.BookingState;
import org.standclear.booking.Bookings;
import org.standclear.check.StoredAnswer;
import org.standclear.platform.ids.BookingId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.ids.ReleaseId;
import org.standclear.platform.time.SqlTime;
import org.standclear.signoff.Lapse;
import org.standclear.signoff.LapseRule;
import org.standclear.signoff.Obstacle;
import org.standclear.signoff.Release;
import org.standclear.signoff.Releases;
import org.standclear.signoff.rules.Lapses;

/** Uses, lapses and ends releases under the locks of booking and cell. */
@Service
class JdbcReleases implements Releases {

    private final Bookings bookings;
    private final Upkeep upkeep;
    private final GateFacts gates;
    private final ReleaseRows rows;
    private final EventRows events;
    private final WaiverRows waivers;
    private final SignoffTrail trail;
    private final Clock clock;

    JdbcReleases(
            Bookings bookings,
            Upkeep upkeep,
            GateFacts gates,
            ReleaseRows rows,
            EventRows events,
            WaiverRows waivers,
            SignoffTrail trail,
            Clock clock) {
        this.bookings = bookings;
        this.upkeep = upkeep;
        this.gates = gates;
        this.rows = rows;
        this.events = events;
        this.waivers = waivers;
        this.trail = trail;
        this.clock = clock;
    }

    @Override
    @Transactional(readOnly = true)
    public Optional<Release> latest(BookingId booking) {
        return rows.latest(booking);
    }

    @Override
    @Transactional(readOnly = true)
    public List<Release> of(BookingId booking) {
        return rows.of(booking);
    }

    @Override
    @Transactional
    public StartPermission useForStart(BookingId id, String code, PersonId by) {
        Instant now = now();
        Upkeep.Current current = upkeep.lock(id, now);
        Release release = rows.latest(id).orElse(null);
        if (current.booking().state() != BookingState.RELEASED || release == null || !release.waits()) {
            return new StartPermission.Refused("not-released", why(current.booking(), release));
        }
        if (now.isBefore(release.issuedAt())) {
            return new StartPermission.Refused(
                    "clock-moved-back",
                    "Not started: the clock stands before the release was issued. Ask who set it; take the release back and"
                            + " issue it anew.");
        }
        if (!release.code().equals(code.strip().toUpperCase(Locale.ROOT))) {
            return new StartPermission.Refused(
                    "other-release", "This page was opened under another release. Read the code again.");
        }
        List<Obstacle> obstacles = gates.obstacles(current.booking(), current.cell(), now);
        if (!obstacles.isEmpty()) {
            return new StartPermission.Refused(
                    obstacles.get(0).code(), "Not started: " + obstacles.get(0).line());
        }
        if (!rows.use(release.id(), now)) {
            return new StartPermission.Refused("used", "This release was used for a start already.");
        }
        useWaiver(current.booking(), release, by, now);
        trail.started(release, by);
        return new StartPermission.Given(rows.find(release.id()).orElseThrow());
    }

    /** The gates were asked: a program that is not within limits has a waiver, and this start is its one run. */
    private void useWaiver(Booking booking, Release release, PersonId by, Instant now) {
        gates.answer(booking)
                .filter(answer -> answer.verdict() != StoredAnswer.Verdict.WITHIN)
                .flatMap(answer -> waivers.standing(booking.id(), answer.id(), now))
                .ifPresent(waiver -> {
                    if (!waivers.use(waiver.id(), release.id(), now)) {
                        throw new IllegalStateException("waiver " + waiver.id() + " was used meanwhile");
                    }
                    trail.waiverUsed(waiver, release, by);
                });
    }

    private static String why(Booking booking, @Nullable Release release) {
        Release.Lapsed lapsed = release == null ? null : release.lapsed();
        if (lapsed != null && booking.state().ordinal() < BookingState.RUNNING.ordinal()) {
            return "Not started: the release lapsed. " + lapsed.because() + " It is issued anew, never stretched.";
        }
        return "Not started: the booking is " + booking.state().words() + ", not released.";
    }

    @Override
    @Transactional
    public void lapse(ReleaseId id, LapseRule rule, String because, @Nullable PersonId by) {
        Release release = rows.find(id).orElseThrow();
        upkeep.keepLapse(bookings.lock(release.booking()), release, new Lapses.Found(rule, because), by, now());
    }

    @Override
    @Transactional
    public boolean withdraw(BookingId id, LapseRule rule, String because, PersonId by) {
        Instant now = now();
        Upkeep.Current current = upkeep.lock(id, now);
        if (current.booking().state() != BookingState.RELEASED) {
            return false;
        }
        upkeep.lapsed(current.booking(), rows.latest(id).orElseThrow(), new Lapses.Found(rule, because), by, now);
        return true;
    }

    @Override
    @Transactional
    public void askFullList(BookingId booking, String because) {
        events.addLapse(new Lapse(booking, null, "short list", Repeats.FULL_LIST, because, now()));
    }

    @Override
    @Transactional
    public void ranThrough(BookingId booking) {
        rows.of(booking).stream()
                .filter(release -> release.usedAt() != null)
                .findFirst()
                .ifPresent(release -> rows.ranThrough(release.id(), now()));
    }

    @Override
    @Transactional
    public void end(ReleaseId release) {
        rows.end(release, now());
    }

    private Instant now() {
        return SqlTime.stored(clock.instant());
    }
}
