package org.standclear.signoff.records;

import java.time.Clock;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;
import org.standclear.booking.Booking;
import org.standclear.booking.BookingState;
import org.standclear.booking.Bookings;
import org.standclear.cell.Cells;
import org.standclear.platform.ids.BookingId;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.time.SqlTime;
import org.standclear.signoff.CellLapses;
import org.standclear.signoff.Lapse;
import org.standclear.signoff.LapseRule;
import org.standclear.signoff.Release;
import org.standclear.signoff.SignoffList;
import org.standclear.signoff.rules.Lapses;

/** Lapses all checks and releases of a cell under the locks of its bookings. */
@Service
class JdbcCellLapses implements CellLapses {

    private final JdbcClient jdbc;
    private final Bookings bookings;
    private final Cells cells;
    private final Upkeep upkeep;
    private final ReleaseRows releases;
    private final EventRows events;
    private final SignoffTrail trail;
    private final Clock clock;

    JdbcCellLapses(
            JdbcClient jdbc,
            Bookings bookings,
            Cells cells,
            Upkeep upkeep,
            ReleaseRows releases,
            EventRows events,
            SignoffTrail trail,
            Clock clock) {
        this.jdbc = jdbc;
        this.bookings = bookings;
        this.cells = cells;
        this.upkeep = upkeep;
        this.releases = releases;
        this.events = events;
        this.trail = trail;
        this.clock = clock;
    }

    @Override
    @Transactional(propagation = Propagation.MANDATORY)
    public void lapseAll(CellId cell, LapseRule rule, String because, @Nullable PersonId by) {
        Instant now = SqlTime.stored(clock.instant());
        List<Booking> locked = locked(cell, now);
        Lapses.Found found = new Lapses.Found(rule, because);
        locked.forEach(booking -> lapse(booking, found, by, now));
    }

    @Override
    @Transactional(propagation = Propagation.MANDATORY)
    public void lock(CellId cell) {
        locked(cell, clock.instant());
    }

    private List<Booking> locked(CellId cell, Instant now) {
        List<Booking> locked = holding(cell, now).stream().map(bookings::lock).toList();
        cells.lock(cell);
        return locked;
    }

    private List<BookingId> holding(CellId cell, Instant now) {
        return jdbc.sql("""
                select id from bookings where cell_id = :cell and (state in ('RUNNING', 'STOPPED')
                    or state in ('CHECKED', 'READY', 'RELEASED') and ends_at > :now) order by id""")
                .param("cell", cell.value())
                .param("now", SqlTime.toSql(now))
                .query((row, number) -> new BookingId(row.getObject("id", UUID.class)))
                .list();
    }

    private void lapse(Booking booking, Lapses.Found found, @Nullable PersonId by, Instant now) {
        BookingState state = booking.state();
        Release release = releases.latest(booking.id())
                .filter(one -> one.lapsed() == null)
                .orElse(null);
        if (state == BookingState.RELEASED && release != null) {
            checkLapsed(booking, found, now);
            upkeep.lapsed(booking, release, found, by, now);
        } else if (state == BookingState.CHECKED || state == BookingState.READY) {
            checkLapsed(booking, found, now);
            Upkeep.moved(bookings.backToBooked(booking.id(), found.because()));
        } else if (state == BookingState.RUNNING || state == BookingState.STOPPED) {
            // the arm has moved, so the booking stays; after its stop it begins again from the check
            checkLapsed(booking, found, now);
            sessionLapsed(booking, found, now);
            if (release != null) {
                upkeep.keepLapse(booking, release, found, by, now);
            }
        }
    }

    private void sessionLapsed(Booking booking, Lapses.Found found, Instant now) {
        String list = SignoffList.SESSION.words();
        events.addLapse(new Lapse(booking.id(), null, list, found.rule().code(), found.because(), now));
    }

    private void checkLapsed(Booking booking, Lapses.Found found, Instant now) {
        events.addLapse(new Lapse(booking.id(), null, "check", found.rule().code(), found.because(), now));
        trail.checkLapsed(booking, found.because());
    }
}
