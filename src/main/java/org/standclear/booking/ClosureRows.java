package org.standclear.booking;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.LabId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.time.SqlTime;

/** Closures of cells as the table has them; removed ones stay there but are not found. */
@Repository
class ClosureRows {

    private final JdbcClient jdbc;

    ClosureRows(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    void insert(LabId lab, CellClosure closure) {
        jdbc.sql("""
                insert into booking_closures (id, lab_id, cell_id, starts_at, ends_at, kind, words, made_by, made_at)
                values (:id, :lab, :cell, :start, :end, :kind, :words, :by, :at)""")
                .param("id", closure.id())
                .param("lab", lab.value())
                .param("cell", closure.cell().value())
                .param("start", SqlTime.toSql(closure.start()))
                .param("end", SqlTime.toSql(closure.end()))
                .param("kind", closure.kind().name())
                .param("words", closure.words())
                .param("by", closure.madeBy().value())
                .param("at", SqlTime.toSql(closure.madeAt()))
                .update();
    }

    /** Whether it was there to be removed. */
    boolean remove(LabId lab, UUID id, PersonId by, Instant at) {
        return jdbc.sql("""
                update booking_closures set removed_by = :by, removed_at = :at
                where id = :id and lab_id = :lab and removed_at is null""")
                        .param("lab", lab.value())
                        .param("by", by.value())
                        .param("at", SqlTime.toSql(at))
                        .param("id", id)
                        .update()
                == 1;
    }

    Optional<CellClosure> find(UUID id) {
        return jdbc.sql("select * from booking_closures where id = :id and removed_at is null")
                .param("id", id)
                .query(ClosureRows::closure)
                .optional();
    }

    List<CellClosure> ofLab(LabId lab, Instant from, Instant until) {
        return jdbc.sql("""
                select * from booking_closures
                where lab_id = :lab and removed_at is null and ends_at > :from and starts_at < :until
                order by starts_at, id""")
                .param("lab", lab.value())
                .param("from", SqlTime.toSql(from))
                .param("until", SqlTime.toSql(until))
                .query(ClosureRows::closure)
                .list();
    }

    private static CellClosure closure(ResultSet row, int number) throws SQLException {
        return new CellClosure(
                row.getObject("id", UUID.class),
                new CellId(row.getObject("cell_id", UUID.class)),
                SqlTime.read(row, "starts_at"),
                SqlTime.read(row, "ends_at"),
                CellClosure.Kind.valueOf(row.getString("kind")),
                row.getString("words"),
                new PersonId(row.getObject("made_by", UUID.class)),
                SqlTime.read(row, "made_at"));
    }
}
