package org.standclear.cell;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.springframework.transaction.annotation.Transactional;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.Id;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.time.SqlTime;
import org.standclear.trail.Trail;
import org.standclear.trail.TrailEntry;

/** The table of readings; the record says who read, not what, so that the second reader stays blind. */
@Repository
class JdbcToolReadings implements ToolReadings {

    private final JdbcClient jdbc;
    private final Cells cells;
    private final CellTagRows tags;
    private final ToolReaders readers;
    private final Trail trail;

    JdbcToolReadings(JdbcClient jdbc, Cells cells, CellTagRows tags, ToolReaders readers, Trail trail) {
        this.jdbc = jdbc;
        this.cells = cells;
        this.tags = tags;
        this.readers = readers;
        this.trail = trail;
    }

    @Override
    @Transactional
    public Optional<String> read(ToolReading reading) {
        Optional<String> mayNot = refusal(reading);
        if (mayNot.isEmpty()) {
            keep(reading, null);
        }
        return mayNot;
    }

    private Optional<String> refusal(ToolReading reading) {
        return readers.refusal(reading.cell(), reading.by(), reading.at());
    }

    @Override
    @Transactional
    public void readFor(UUID change, ToolReading reading) {
        keep(reading, change);
    }

    private void keep(ToolReading reading, @Nullable UUID change) {
        Cell cell = cells.lock(reading.cell());
        jdbc.sql("""
                insert into cell_tool_readings (id, cell_id, read_by, read_at, tool_code, offset_x_mm, offset_y_mm,
                    offset_z_mm, change_id)
                values (:id, :cell, :by, :at, :tool, :x, :y, :z, :change)""")
                .param("id", Id.newValue())
                .param("cell", reading.cell().value())
                .param("by", reading.by().value())
                .param("at", SqlTime.toSql(reading.at()))
                .param("tool", reading.toolCode())
                .param("x", reading.offsetMm().get(0))
                .param("y", reading.offsetMm().get(1))
                .param("z", reading.offsetMm().get(2))
                .param("change", change)
                .update();
        trail.append(TrailEntry.of(
                cell.lab(),
                "cell.tool-read",
                cell.id(),
                reading.by(),
                "Tool and offset of " + cell.name() + " were read"));
    }

    @Override
    public List<ToolReading> sinceTagged(CellId cell) {
        List<ToolReading> kept = jdbc.sql(
                        "select * from cell_tool_readings where cell_id = :cell and kept_no > :after order by kept_no")
                .param("cell", cell.value())
                .param("after", tags.before(cell).reading())
                .query(JdbcToolReadings::reading)
                .list();
        return latest(kept).stream().filter(one -> refusal(one).isEmpty()).toList();
    }

    @Override
    public List<ToolReading> of(UUID change) {
        return latest(jdbc.sql("select * from cell_tool_readings where change_id = :change order by kept_no")
                .param("change", change)
                .query(JdbcToolReadings::reading)
                .list());
    }

    private static List<ToolReading> latest(List<ToolReading> all) {
        Map<PersonId, ToolReading> latest = new LinkedHashMap<>();
        all.forEach(reading -> latest.put(reading.by(), reading));
        return List.copyOf(latest.values());
    }

    private static ToolReading reading(ResultSet row, int number) throws SQLException {
        return new ToolReading(
                new CellId(row.getObject("cell_id", UUID.class)),
                new PersonId(row.getObject("read_by", UUID.class)),
                SqlTime.read(row, "read_at"),
                row.getString("tool_code"),
                List.of(row.getDouble("offset_x_mm"), row.getDouble("offset_y_mm"), row.getDouble("offset_z_mm")));
    }
}
