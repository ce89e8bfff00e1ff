package org.standclear.booking.allocation;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.springframework.transaction.annotation.Transactional;
import org.standclear.people.People;
import org.standclear.platform.ids.Id;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.lab.Labs;
import org.standclear.platform.time.SqlTime;
import org.standclear.platform.web.NotFoundException;
import org.standclear.trail.Trail;
import org.standclear.trail.TrailEntry;

/** The windows of the lab. */
@Repository
public class Windows {

    private final JdbcClient jdbc;
    private final Labs labs;
    private final People people;
    private final Trail trail;
    private final Clock clock;

    Windows(JdbcClient jdbc, Labs labs, People people, Trail trail, Clock clock) {
        this.jdbc = jdbc;
        this.labs = labs;
        this.people = people;
        this.trail = trail;
        this.clock = clock;
    }

    /** The window of that id. */
    public Optional<Window> find(UUID id) {
        return jdbc.sql("select * from booking_windows where id = :id")
                .param("id", id)
                .query(Windows::window)
                .optional();
    }

    /** Windows that end on that day or later, by first day. */
    public List<Window> from(LocalDate day) {
        return jdbc.sql(
                        "select * from booking_windows where lab_id = :lab and last_day >= :day order by first_day, made_at")
                .param("lab", labs.theLab().id().value())
                .param("day", day)
                .query(Windows::window)
                .list();
    }

    /** Lab staff open a window for requests. */
    @Transactional
    public UUID open(String title, LocalDate firstDay, LocalDate lastDay, Instant requestsUntil, PersonId by) {
        asStaff(by);
        UUID id = Id.newValue();
        jdbc.sql("""
                insert into booking_windows (id, lab_id, title, first_day, last_day, requests_until, made_by, made_at)
                values (:id, :lab, :title, :first, :last, :until, :by, :at)""")
                .param("id", id)
                .param("lab", labs.theLab().id().value())
                .param("title", title)
                .param("first", firstDay)
                .param("last", lastDay)
                .param("until", SqlTime.toSql(requestsUntil))
                .param("by", by.value())
                .param("at", SqlTime.toSql(clock.instant()))
                .update();
        tell("booking.window-opened", id, by, "The window \"" + title + "\" takes requests.");
        return id;
    }

    /**
     * Reads the window and locks it until the transaction ends: one search begins, one plan is accepted at a time,
     * and nobody changes their request meanwhile. A window of another lab is not there.
     */
    Window lock(UUID id) {
        return jdbc.sql("select * from booking_windows where id = :id and lab_id = :lab for update")
                .param("lab", labs.theLab().id().value())
                .param("id", id)
                .query(Windows::window)
                .optional()
                .orElseThrow(() -> new NotFoundException("window"));
    }

    /** The same for what only lab staff do, whatever page asked before. */
    Window lockForStaff(UUID id, PersonId by) {
        asStaff(by);
        return lock(id);
    }

    private void asStaff(PersonId by) {
        if (people.find(by).filter(one -> one.active() && one.isLabStaff()).isEmpty()) {
            throw new NotFoundException("window");
        }
    }

    void accept(UUID id, UUID search, PersonId by) {
        jdbc.sql("""
                update booking_windows set accepted_search = :search, accepted_by = :by, accepted_at = :at
                where id = :id""")
                .param("search", search)
                .param("by", by.value())
                .param("at", SqlTime.toSql(clock.instant()))
                .param("id", id)
                .update();
    }

    void undo(UUID id) {
        jdbc.sql("""
                update booking_windows set accepted_search = null, accepted_by = null, accepted_at = null
                where id = :id""").param("id", id).update();
    }

    void close(UUID id, PersonId by, String reason) {
        jdbc.sql("""
                update booking_windows set closed_by = :by, closed_at = :at, closed_reason = :reason where id = :id""")
                .param("by", by.value())
                .param("at", SqlTime.toSql(clock.instant()))
                .param("reason", reason)
                .param("id", id)
                .update();
    }

    void reopen(UUID id) {
        jdbc.sql("""
                update booking_windows set closed_by = null, closed_at = null, closed_reason = null
                where id = :id""").param("id", id).update();
    }

    void tell(String kind, UUID window, PersonId by, String words) {
        trail.append(TrailEntry.of(labs.theLab().id(), kind, window, by, words));
    }

    private static Window window(ResultSet row, int number) throws SQLException {
        return new Window(
                row.getObject("id", UUID.class),
                row.getString("title"),
                row.getObject("first_day", LocalDate.class),
                row.getObject("last_day", LocalDate.class),
                SqlTime.read(row, "requests_until"),
                accepted(row),
                closed(row));
    }

    private static Window.@Nullable Closed closed(ResultSet row) throws SQLException {
        UUID by = row.getObject("closed_by", UUID.class);
        return by == null
                ? null
                : new Window.Closed(new PersonId(by), SqlTime.read(row, "closed_at"), row.getString("closed_reason"));
    }

    private static Window.@Nullable Accepted accepted(ResultSet row) throws SQLException {
        UUID search = row.getObject("accepted_search", UUID.class);
        return search == null
                ? null
                : new Window.Accepted(
                        search,
                        new PersonId(row.getObject("accepted_by", UUID.class)),
                        SqlTime.read(row, "accepted_at"));
    }
}
