package org.standclear.run.records;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.standclear.platform.ids.BookingId;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.Id;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.ids.ReleaseId;
import org.standclear.platform.ids.RunId;
import org.standclear.platform.time.SqlTime;
import org.standclear.run.RunEvent;

/** Events in the database; only ever added. */
@Repository
class EventLog {

    private final JdbcClient jdbc;

    EventLog(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    RunEvent add(RunEvent event) {
        jdbc.sql("""
                insert into run_events (id, cell_id, booking_id, run_id, release_id, kind, item, answer, words, account_id,
                    happened_at, corrects)
                values (:id, :cell, :booking, :run, :release, :kind, :item, :answer, :words, :account, :at, :corrects)""")
                .param("id", event.id())
                .param("cell", event.cell().value())
                .param("booking", value(event.booking()))
                .param("run", value(event.run()))
                .param("release", value(event.release()))
                .param("kind", event.kind().name())
                .param("item", event.item())
                .param("answer", event.answer())
                .param("words", event.words())
                .param("account", event.account().value())
                .param("at", SqlTime.toSql(event.at()))
                .param("corrects", event.corrects())
                .update();
        return event;
    }

    List<RunEvent> of(BookingId booking) {
        return jdbc.sql("select * from run_events where booking_id = :booking order by happened_at, id")
                .param("booking", booking.value())
                .query(EventLog::event)
                .list();
    }

    List<RunEvent> recentStops(CellId cell, int atMost) {
        return jdbc.sql("""
                select * from run_events where cell_id = :cell and kind in ('E_STOP_PRESS', 'PROTECTIVE_STOP')
                order by happened_at desc, id desc fetch first :count rows only""")
                .param("cell", cell.value())
                .param("count", atMost)
                .query(EventLog::event)
                .list();
    }

    private static @Nullable UUID value(@Nullable Id id) {
        return id == null ? null : id.value();
    }

    private static RunEvent event(ResultSet row, int number) throws SQLException {
        UUID booking = row.getObject("booking_id", UUID.class);
        UUID run = row.getObject("run_id", UUID.class);
        UUID release = row.getObject("release_id", UUID.class);
        return new RunEvent(
                row.getObject("id", UUID.class),
                new CellId(row.getObject("cell_id", UUID.class)),
                booking == null ? null : new BookingId(booking),
                run == null ? null : new RunId(run),
                release == null ? null : new ReleaseId(release),
                RunEvent.Kind.valueOf(row.getString("kind")),
                row.getObject("item", Integer.class),
                row.getString("answer"),
                row.getString("words"),
                new PersonId(row.getObject("account_id", UUID.class)),
                SqlTime.read(row, "happened_at"),
                row.getObject("corrects", UUID.class));
    }
}
