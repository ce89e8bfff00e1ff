package org.standclear.booking;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.util.List;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.springframework.transaction.annotation.Transactional;
import org.standclear.platform.ids.LabId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.lab.Labs;
import org.standclear.platform.time.SqlTime;
import org.standclear.trail.Trail;
import org.standclear.trail.TrailEntry;

/** One row per change; the highest number counts. */
@Repository
class JdbcBookingNumbers implements BookingNumbers {

    private final JdbcClient jdbc;
    private final Labs labs;
    private final Trail trail;
    private final Clock clock;
    private final ShortMemory<BookingSettings> memory = new ShortMemory<>(this::stored);

    JdbcBookingNumbers(JdbcClient jdbc, Labs labs, Trail trail, Clock clock) {
        this.jdbc = jdbc;
        this.labs = labs;
        this.trail = trail;
        this.clock = clock;
    }

    @Override
    public BookingSettings inForce() {
        return memory.get();
    }

    private BookingSettings stored() {
        return jdbc.sql("select * from booking_settings where lab_id = :lab order by number desc fetch first row only")
                .param("lab", labs.theLab().id().value())
                .query(JdbcBookingNumbers::settings)
                .optional()
                .orElse(BookingSettings.DEFAULTS);
    }

    @Override
    public List<Change> changes(int atMost) {
        return jdbc.sql(
                        "select * from booking_settings where lab_id = :lab order by number desc fetch first :most rows only")
                .param("lab", labs.theLab().id().value())
                .param("most", atMost)
                .query((row, number) -> new Change(
                        settings(row, number),
                        new PersonId(row.getObject("changed_by", UUID.class)),
                        SqlTime.read(row, "changed_at"),
                        row.getString("reason")))
                .list();
    }

    @Override
    @Transactional
    public void change(BookingSettings settings, PersonId by, String reason) {
        LabId lab = labs.theLab().id();
        BookingSettings before = stored();
        memory.forget();
        jdbc.sql("""
                insert into booking_settings (lab_id, number, slot_minutes, horizon_days, future_per_person,
                    week_per_person, per_assignment, late_release_hours, late_cancel_minutes, check_in_opens_minutes,
                    grace_minutes, changed_by, changed_at, reason, offer_minutes, confirm_minutes)
                select cast(:lab as uuid), 1 + coalesce(max(number), 0), :slot, :horizon, :future, :week, :assignment,
                    :release, :late, :opens, :grace, :by, :at, :reason, :offer, :confirm
                from booking_settings where lab_id = :lab""")
                .param("lab", lab.value())
                .param("slot", settings.slotMinutes())
                .param("horizon", settings.horizonDays())
                .param("future", settings.futurePerPerson())
                .param("week", settings.weekPerPerson())
                .param("assignment", settings.perAssignment())
                .param("release", settings.lateReleaseHours())
                .param("late", settings.lateCancelMinutes())
                .param("opens", settings.checkInOpensMinutes())
                .param("grace", settings.graceMinutes())
                .param("offer", settings.offerMinutes())
                .param("confirm", settings.confirmMinutes())
                .param("by", by.value())
                .param("at", SqlTime.toSql(clock.instant()))
                .param("reason", reason)
                .update();
        trail.append(TrailEntry.of(lab, "booking.numbers-changed", lab, by, "Changed the booking rules: " + reason)
                .with("before", before)
                .with("after", settings));
    }

    private static BookingSettings settings(ResultSet row, int number) throws SQLException {
        return new BookingSettings(
                row.getInt("slot_minutes"),
                row.getInt("horizon_days"),
                row.getInt("future_per_person"),
                row.getInt("week_per_person"),
                row.getInt("per_assignment"),
                row.getInt("late_release_hours"),
                row.getInt("late_cancel_minutes"),
                row.getInt("check_in_opens_minutes"),
                row.getInt("grace_minutes"),
                row.getInt("offer_minutes"),
                row.getInt("confirm_minutes"));
    }
}
