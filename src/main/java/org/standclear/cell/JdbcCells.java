package org.standclear.cell;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;
import org.standclear.platform.database.RowLocks;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.LabId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.lab.Labs;
import org.standclear.platform.time.LabTime;
import org.standclear.platform.time.SqlTime;

/** Cells and their versions as the tables have them. */
@Repository
class JdbcCells implements Cells {

    private final JdbcClient jdbc;
    private final Labs labs;
    private final LabTime labTime;
    private final DayTestRows dayTests;
    private final CellStops stops;
    private final RecurringRows duties;
    private final CellFiles files;
    private final RowLocks locks;

    JdbcCells(
            JdbcClient jdbc,
            Labs labs,
            LabTime labTime,
            DayTestRows dayTests,
            CellStops stops,
            RecurringRows duties,
            CellFiles files,
            RowLocks locks) {
        this.jdbc = jdbc;
        this.labs = labs;
        this.labTime = labTime;
        this.dayTests = dayTests;
        this.stops = stops;
        this.duties = duties;
        this.files = files;
        this.locks = locks;
    }

    @Override
    public List<Cell> all() {
        return jdbc.sql("select * from cells where lab_id = :lab order by name")
                .param("lab", labs.theLab().id().value())
                .query(JdbcCells::cell)
                .list();
    }

    @Override
    public Optional<Cell> find(CellId id) {
        return jdbc.sql("select * from cells where id = :id")
                .param("id", id.value())
                .query(JdbcCells::cell)
                .optional();
    }

    @Override
    public CellVersion current(CellId id) {
        return jdbc.sql("""
                select v.* from cell_versions v join cells c on c.id = v.cell_id and c.current_version = v.number
                where c.id = :id""").param("id", id.value()).query(JdbcCells::version).single();
    }

    @Override
    public Map<CellId, String> fittedTools() {
        Map<CellId, String> tools = new HashMap<>();
        jdbc.sql("""
                select c.id, v.fitted_tool
                from cells c join cell_versions v on v.cell_id = c.id and v.number = c.current_version
                where c.lab_id = :lab""").param("lab", labs.theLab().id().value()).query(row -> {
            tools.put(new CellId(row.getObject("id", UUID.class)), row.getString("fitted_tool"));
        });
        return tools;
    }

    @Override
    public Optional<CellVersion> version(CellId id, int number) {
        return jdbc.sql("select * from cell_versions where cell_id = :id and number = :number")
                .param("id", id.value())
                .param("number", number)
                .query(JdbcCells::version)
                .optional();
    }

    @Override
    public List<CellVersion> versions(CellId id) {
        return jdbc.sql("select * from cell_versions where cell_id = :id order by number desc")
                .param("id", id.value())
                .query(JdbcCells::version)
                .list();
    }

    @Override
    @Transactional(propagation = Propagation.MANDATORY)
    public Cell lock(CellId id) {
        return jdbc.sql("select * from cells where id = :id" + locks.forChange())
                .param("id", id.value())
                .query(JdbcCells::cell)
                .single();
    }

    @Override
    public List<Obstacle> obstacles(CellId id, Instant at) {
        Cell cell = find(id).orElseThrow(() -> new IllegalArgumentException("no cell " + id));
        Optional<DayTest> today =
                dayTests.latest(id, at).filter(test -> test.date().equals(labTime.date(at)));
        CellVersion inForce = current(id);
        List<Obstacle> found = new ArrayList<>(CellGates.obstacles(cell, inForce, today, stops.open(id)));
        today.filter(DayTest::passed)
                .filter(test -> CellGates.sameTool(test, inForce) && limitsChanged(test, inForce))
                .ifPresent(test -> found.add(CellGates.testedUnderOtherLimits(cell, test)));
        if (isToolChanged(id)) {
            found.add(new Obstacle(
                    "tool-change-open",
                    "The tool of " + cell.name() + " is being changed.",
                    "Two people of the staff read its offset, each alone, on the page of " + cell.name() + "."));
        }
        duties.due(id).stream()
                .filter(due -> due.overdue(labTime.date(at)))
                .forEach(due -> found.add(CellGates.overdue(cell, due, labTime.day(due.due()))));
        return List.copyOf(found);
    }

    private boolean isToolChanged(CellId id) {
        return jdbc.sql("select count(*) from cell_tool_changes where cell_id = :cell and open_mark = 1")
                        .param("cell", id.value())
                        .query(Integer.class)
                        .single()
                > 0;
    }

    private boolean limitsChanged(DayTest test, CellVersion inForce) {
        return test.cellVersion() != inForce.number()
                && version(test.cell(), test.cellVersion())
                        .filter(tested -> files.factsOf(tested)
                                .limits()
                                .equals(files.factsOf(inForce).limits()))
                        .isEmpty();
    }

    private static Cell cell(ResultSet row, int number) throws SQLException {
        return new Cell(
                new CellId(row.getObject("id", UUID.class)),
                new LabId(row.getObject("lab_id", UUID.class)),
                row.getString("name"),
                CellState.valueOf(row.getString("state")),
                row.getString("state_reason"),
                row.getInt("current_version"),
                row.getInt("start_offset_minutes"));
    }

    private static CellVersion version(ResultSet row, int number) throws SQLException {
        return new CellVersion(
                new CellId(row.getObject("cell_id", UUID.class)),
                row.getInt("number"),
                row.getString("file"),
                row.getString("sha256"),
                row.getString("fitted_tool"),
                new PersonId(row.getObject("proposed_by", UUID.class)),
                new PersonId(row.getObject("approved_by", UUID.class)),
                SqlTime.read(row, "in_force_since"),
                row.getString("reason"));
    }
}
