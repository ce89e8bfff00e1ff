package org.standclear.cell;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;
import org.standclear.platform.database.RowLocks;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.live.LiveEvents;
import org.standclear.platform.time.SqlTime;

/** The table of stops; a stop is reset once. */
@Repository
class JdbcCellStops implements CellStops {

    private final JdbcClient jdbc;
    private final LiveEvents live;
    private final RowLocks locks;

    JdbcCellStops(JdbcClient jdbc, LiveEvents live, RowLocks locks) {
        this.locks = locks;
        this.jdbc = jdbc;
        this.live = live;
    }

    @Override
    @Transactional(propagation = Propagation.MANDATORY)
    public void log(CellStop stop) {
        live.cellChanged(stop.cell());
        jdbc.sql("select id from cells where id = :id" + locks.forChange())
                .param("id", stop.cell().value())
                .query(UUID.class)
                .single();
        jdbc.sql("""
                insert into cell_stops (id, cell_id, arm_stopped_itself, logged_by, happened_at)
                values (:id, :cell, :arm, :by, :at)""")
                .param("id", stop.id())
                .param("cell", stop.cell().value())
                .param("arm", stop.armStoppedItself())
                .param("by", stop.loggedBy().value())
                .param("at", SqlTime.toSql(stop.at()))
                .update();
    }

    @Override
    public List<CellStop> open(CellId cell) {
        return jdbc.sql("select * from cell_stops where cell_id = :cell and reset_at is null order by happened_at, id")
                .param("cell", cell.value())
                .query(JdbcCellStops::stop)
                .list();
    }

    @Override
    @Transactional(propagation = Propagation.MANDATORY)
    public void reset(CellId cell, CellStop.Reset reset) {
        live.cellChanged(cell);
        jdbc.sql("""
                update cell_stops set reset_by = :by, reset_at = :at, cause = :cause, precaution = :precaution
                where cell_id = :cell and reset_at is null""")
                .param("by", reset.by().value())
                .param("at", SqlTime.toSql(reset.at()))
                .param("cause", reset.cause())
                .param("precaution", reset.precaution())
                .param("cell", cell.value())
                .update();
    }

    static CellStop stop(ResultSet row, int number) throws SQLException {
        return new CellStop(
                row.getObject("id", UUID.class),
                new CellId(row.getObject("cell_id", UUID.class)),
                row.getBoolean("arm_stopped_itself"),
                new PersonId(row.getObject("logged_by", UUID.class)),
                SqlTime.read(row, "happened_at"),
                reset(row));
    }

    private static CellStop.@Nullable Reset reset(ResultSet row) throws SQLException {
        UUID by = row.getObject("reset_by", UUID.class);
        return by == null
                ? null
                : new CellStop.Reset(
                        new PersonId(by),
                        SqlTime.read(row, "reset_at"),
                        row.getString("cause"),
                        row.getBoolean("precaution"));
    }
}
