package org.standclear.booking;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;
import org.standclear.booking.BookingMoves.Told;
import org.standclear.booking.Bookings.Transition;
import org.standclear.platform.time.SqlTime;

/** Reminds people a day and an hour before, and gives up what nobody confirmed in time. */
@Component
class Reminders {

    private static final int DAY = 24;
    private static final int HOUR = 1;

    /** In the column of hours: the question whether somebody comes. */
    private static final int ASKED = 0;

    private final BookingRows rows;
    private final BookingMoves moves;
    private final BookingLetters letters;
    private final Confirmations confirmations;
    private final JdbcClient jdbc;

    Reminders(
            BookingRows rows,
            BookingMoves moves,
            BookingLetters letters,
            Confirmations confirmations,
            JdbcClient jdbc) {
        this.rows = rows;
        this.moves = moves;
        this.letters = letters;
        this.confirmations = confirmations;
        this.jdbc = jdbc;
    }

    /** Who booked later than that needs no reminder of it. */
    @Transactional
    public void remind() {
        remind(DAY, HOUR);
        remind(HOUR, 0);
        askWhoComes();
    }

    /** An hour before the slot would be given up; the reminders say it too, but may come sooner or too late. */
    private void askWhoComes() {
        int minutes = moves.settings().confirmMinutes();
        if (minutes == 0) {
            return;
        }
        Instant givenUp = moves.now().plus(Duration.ofMinutes(minutes));
        for (BookingLife life : rows.lockToRemind(givenUp, givenUp.plus(Duration.ofHours(HOUR)), ASKED)) {
            keep(life.booking(), ASKED);
            confirmations.askedUntil(life.booking().id()).ifPresent(until -> letters.asked(life.booking(), until));
        }
    }

    private void keep(Booking booking, int hours) {
        jdbc.sql("insert into booking_reminders (booking_id, hours, reminded_at) values (:id, :hours, :at)")
                .param("id", booking.id().value())
                .param("hours", hours)
                .param("at", SqlTime.toSql(moves.now()))
                .update();
    }

    private void remind(int hours, int notWithin) {
        Instant now = moves.now();
        List<BookingLife> due =
                rows.lockToRemind(now.plus(Duration.ofHours(notWithin)), now.plus(Duration.ofHours(hours)), hours);
        for (BookingLife life : due) {
            Booking booking = life.booking();
            keep(booking, hours);
            if (wasMadeBefore(booking, Duration.ofHours(hours))) {
                letters.reminded(
                        booking, hours, confirmations.askedUntil(booking.id()).orElse(null));
            }
        }
    }

    /** Naming the program confirms, and so does saying that one comes. */
    @Transactional
    public void giveUpUnconfirmed() {
        BookingSettings settings = moves.settings();
        if (settings.confirmMinutes() == 0) {
            return;
        }
        Duration before = Duration.ofMinutes(settings.confirmMinutes());
        Instant now = moves.now();
        for (BookingLife life : rows.lockUnconfirmed(now, now.plus(before))) {
            if (!wasMadeBefore(life.booking(), before)) {
                continue;
            }
            Transition done = moves.keep(
                    life,
                    life.giveUp(BookingEvent.CANCEL),
                    new Told(
                            "unconfirmed",
                            null,
                            "nobody confirmed it in time; the slot is free again, nothing counted"));
            if (done instanceof Transition.Moved moved) {
                letters.unconfirmed(moved.booking(), settings.confirmMinutes());
            }
        }
    }

    private boolean wasMadeBefore(Booking booking, Duration before) {
        return !rows.madeAt(booking.id()).isAfter(booking.start().minus(before));
    }
}
