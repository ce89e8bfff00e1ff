package org.standclear.booking;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.standclear.booking.BulkMoves.BulkMove;
import org.standclear.booking.BulkMoves.Moved;
import org.standclear.platform.ids.BookingId;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.LabId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.time.SqlTime;

/** Bulk moves as the tables have them. */
@Repository
class BulkRows {

    private final JdbcClient jdbc;

    BulkRows(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    void insert(LabId lab, BulkMove move) {
        jdbc.sql("""
                insert into booking_bulk_moves (id, lab_id, cell_id, moved_by, moved_at, reason)
                values (:id, :lab, :cell, :by, :at, :reason)""")
                .param("id", move.id())
                .param("lab", lab.value())
                .param("cell", move.cell().value())
                .param("by", move.by().value())
                .param("at", SqlTime.toSql(move.at()))
                .param("reason", move.reason())
                .update();
        int number = 0;
        for (Moved one : move.moved()) {
            BookingId now = one.now();
            jdbc.sql("""
                    insert into booking_bulk_moved (bulk_id, number, was_booking, now_booking, elsewhere)
                    values (:id, :number, :was, :now, :elsewhere)""")
                    .param("id", move.id())
                    .param("number", ++number)
                    .param("was", one.was().value())
                    .param("now", now == null ? null : now.value())
                    .param("elsewhere", one.elsewhere())
                    .update();
        }
    }

    Optional<BulkMove> find(LabId lab, UUID id, boolean lock) {
        List<Moved> moved = jdbc.sql("select * from booking_bulk_moved where bulk_id = :id order by number")
                .param("id", id)
                .query((row, number) -> {
                    UUID now = row.getObject("now_booking", UUID.class);
                    return new Moved(
                            new BookingId(row.getObject("was_booking", UUID.class)),
                            now == null ? null : new BookingId(now),
                            row.getBoolean("elsewhere"),
                            row.getBoolean("stays"));
                })
                .list();
        return jdbc.sql("select * from booking_bulk_moves where id = :id and lab_id = :lab"
                        + (lock ? " for update" : ""))
                .param("lab", lab.value())
                .param("id", id)
                .query((row, number) -> new BulkMove(
                        id,
                        new CellId(row.getObject("cell_id", UUID.class)),
                        new PersonId(row.getObject("moved_by", UUID.class)),
                        SqlTime.read(row, "moved_at"),
                        row.getString("reason"),
                        moved,
                        SqlTime.readNullable(row, "undone_at")))
                .optional();
    }

    void stays(UUID id, BookingId was) {
        jdbc.sql("update booking_bulk_moved set stays = true where bulk_id = :id and was_booking = :was")
                .param("id", id)
                .param("was", was.value())
                .update();
    }

    void undone(UUID id, PersonId by, Instant at) {
        jdbc.sql("update booking_bulk_moves set undone_by = :by, undone_at = :at where id = :id")
                .param("by", by.value())
                .param("at", SqlTime.toSql(at))
                .param("id", id)
                .update();
    }
}
