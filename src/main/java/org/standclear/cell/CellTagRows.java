package org.standclear.cell;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.time.SqlTime;

/** The table of tags; a tag is hung once and lifted once. */
@Repository
class CellTagRows {

    private static final int REASON_LENGTH = 1000;

    private static final List<String> COME_OFF = Arrays.stream(CellTag.Kind.values())
            .filter(CellTag.Kind::comesOffAtReturn)
            .map(CellTag.Kind::name)
            .toList();

    private final JdbcClient jdbc;

    CellTagRows(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** Which test and which reading were the cell's last when its latest tag was hung; 0 where there was none. */
    record Before(long test, long reading) {}

    /** The numbers are read under the cell's row lock, so nothing is kept between them and the tag. */
    void add(CellTag tag) {
        jdbc.sql("""
                insert into cell_tags (id, cell_id, kind, reason, placed_by, placed_at, caused_by, last_test, last_reading)
                values (:id, :cell, :kind, :reason, :by, :at, :causedBy,
                    (select coalesce(max(t.kept_no), 0) from cell_day_tests t where t.cell_id = :cell),
                    (select coalesce(max(r.kept_no), 0) from cell_tool_readings r where r.cell_id = :cell))""")
                .param("id", tag.id())
                .param("cell", tag.cell().value())
                .param("kind", tag.kind().name())
                .param("reason", cut(tag.reason()))
                .param("by", tag.placedBy().value())
                .param("at", SqlTime.toSql(tag.placedAt()))
                .param("causedBy", valueOf(tag.causedBy()), java.sql.Types.OTHER)
                .update();
    }

    void lift(CellTag tag, CellTag.Lifted lifted) {
        jdbc.sql("""
                update cell_tags set lifted_by = :by, lifted_at = :at, lift_reason = :reason
                where id = :id and lifted_by is null""")
                .param("by", lifted.by().value())
                .param("at", SqlTime.toSql(lifted.at()))
                .param("reason", cut(lifted.reason()))
                .param("id", tag.id())
                .update();
    }

    List<CellTag> hanging(CellId cell) {
        return jdbc.sql("select * from cell_tags where cell_id = :cell and lifted_by is null order by placed_at, id")
                .param("cell", cell.value())
                .query(CellTagRows::tag)
                .list();
    }

    /** What was there when the last was hung of the tags that a return to service takes off. */
    Before before(CellId cell) {
        return jdbc.sql("""
                select coalesce(max(last_test), 0) as test, coalesce(max(last_reading), 0) as reading from cell_tags
                where cell_id = :cell and lifted_by is null and kind in (:kinds)""")
                .param("cell", cell.value())
                .param("kinds", COME_OFF)
                .query((row, number) -> new Before(row.getLong("test"), row.getLong("reading")))
                .single();
    }

    List<CellTag> all(CellId cell) {
        return jdbc.sql("select * from cell_tags where cell_id = :cell order by placed_at desc, id desc")
                .param("cell", cell.value())
                .query(CellTagRows::tag)
                .list();
    }

    // a tag is hung whatever its reason's length: stopping a cell must not fail on a long sentence
    private static String cut(String reason) {
        return reason.length() > REASON_LENGTH ? reason.substring(0, REASON_LENGTH - 1) + "…" : reason;
    }

    private static @Nullable UUID valueOf(@Nullable PersonId person) {
        return person == null ? null : person.value();
    }

    private static CellTag tag(ResultSet row, int number) throws SQLException {
        UUID causedBy = row.getObject("caused_by", UUID.class);
        UUID liftedBy = row.getObject("lifted_by", UUID.class);
        Instant liftedAt = SqlTime.readNullable(row, "lifted_at");
        return new CellTag(
                row.getObject("id", UUID.class),
                new CellId(row.getObject("cell_id", UUID.class)),
                CellTag.Kind.valueOf(row.getString("kind")),
                row.getString("reason"),
                new PersonId(row.getObject("placed_by", UUID.class)),
                SqlTime.read(row, "placed_at"),
                causedBy == null ? null : new PersonId(causedBy),
                liftedBy == null || liftedAt == null
                        ? null
                        : new CellTag.Lifted(new PersonId(liftedBy), liftedAt, row.getString("lift_reason")));
    }
}
