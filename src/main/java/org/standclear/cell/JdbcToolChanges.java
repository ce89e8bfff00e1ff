package org.standclear.cell;

import java.time.Clock;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.springframework.transaction.annotation.Transactional;
import org.standclear.cell.CellRegister.Decided;
import org.standclear.cell.CellRegister.NewProposal;
import org.standclear.cell.CellRegister.Proposed;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.Id;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.live.LiveEvents;
import org.standclear.platform.time.SqlTime;
import org.standclear.trail.Trail;
import org.standclear.trail.TrailEntry;

/** Tool changes under the cell's row lock; readings are those of the cell, so that nobody sees another's. */
@Repository
class JdbcToolChanges implements ToolChanges {

    private final JdbcClient jdbc;
    private final Cells cells;
    private final CellRegister register;
    private final Equipment equipment;
    private final ToolReadings readings;
    private final ToolReaders readers;
    private final CellFiles files;
    private final LiveEvents live;
    private final Trail trail;
    private final Clock clock;

    JdbcToolChanges(
            JdbcClient jdbc,
            Cells cells,
            CellRegister register,
            Equipment equipment,
            ToolReadings readings,
            ToolReaders readers,
            CellFiles files,
            LiveEvents live,
            Trail trail,
            Clock clock) {
        this.jdbc = jdbc;
        this.cells = cells;
        this.register = register;
        this.equipment = equipment;
        this.readings = readings;
        this.readers = readers;
        this.files = files;
        this.live = live;
        this.trail = trail;
        this.clock = clock;
    }

    private record Row(UUID id, UUID tool, PersonId begunBy, Instant begunAt) {}

    @Override
    public Optional<Change> open(CellId cell) {
        return row(cell)
                .map(row -> new Change(
                        row.id(),
                        equipment.find(row.tool()).orElseThrow(),
                        row.begunBy(),
                        row.begunAt(),
                        readings.of(row.id()).stream().map(ToolReading::by).toList()));
    }

    private Optional<Row> row(CellId cell) {
        return jdbc.sql("select * from cell_tool_changes where cell_id = :cell and open_mark = 1")
                .param("cell", cell.value())
                .query((row, number) -> new Row(
                        row.getObject("id", UUID.class),
                        row.getObject("tool_id", UUID.class),
                        new PersonId(row.getObject("begun_by", UUID.class)),
                        SqlTime.read(row, "begun_at")))
                .optional();
    }

    @Override
    @Transactional
    public Outcome begin(CellId id, UUID toolId, PersonId by) {
        // the register's row before the cell's: who approves a tool measured anew goes on to the cells where it is
        boolean inUse = equipment.inUse(toolId);
        Cell cell = cells.lock(id);
        if (row(id).isPresent()) {
            return new Outcome.Refused("A tool change goes on at " + cell.name() + " already.");
        }
        Equipment.Item tool = equipment.find(toolId).orElse(null);
        if (tool == null || tool.kind() != Equipment.Kind.TOOL || !inUse) {
            return new Outcome.Refused(
                    "Choose a tool from the register that a second person has approved and nobody has measured anew since.");
        }
        if (next(cell, tool) == null) {
            return new Outcome.Refused("The file of " + cell.name()
                    + " cannot be rewritten by itself. Propose a new version on the cell's page.");
        }
        jdbc.sql("""
                insert into cell_tool_changes (id, cell_id, tool_id, begun_by, begun_at, open_mark)
                values (:id, :cell, :tool, :by, :at, 1)""")
                .param("id", Id.newValue())
                .param("cell", id.value())
                .param("tool", toolId)
                .param("by", by.value())
                .param("at", SqlTime.toSql(now()))
                .update();
        tell("cell.tool-change-begun", cell, by, cell.name() + ": tool change to " + tool.code() + " begun.");
        return new Outcome.Going();
    }

    @Override
    @Transactional
    public Outcome read(CellId id, String toolCode, List<Double> offsetMm, PersonId by) {
        // as when it begins: the register's row before the cell's
        UUID tool = row(id).map(Row::tool).orElse(null);
        boolean inUse = tool != null && equipment.inUse(tool);
        Cell cell = cells.lock(id);
        Row row = row(id).orElse(null);
        if (row == null) {
            return new Outcome.Refused("No tool change goes on at " + cell.name() + ".");
        }
        if (!row.tool().equals(tool)) {
            return new Outcome.Refused("Another tool is fitted at " + cell.name() + " by now. Look again.");
        }
        Optional<String> mayNot = readers.refusal(id, by, now());
        if (mayNot.isPresent()) {
            return new Outcome.Refused(mayNot.get());
        }
        readings.readFor(row.id(), new ToolReading(id, by, now(), toolCode, offsetMm));
        List<ToolReading> all = readings.of(row.id());
        return all.size() < 2 ? new Outcome.Going() : compare(cell, row, inUse, all, by);
    }

    private Outcome compare(Cell cell, Row row, boolean inUse, List<ToolReading> all, PersonId by) {
        Equipment.Item tool = equipment.find(row.tool()).orElseThrow();
        if (!inUse) {
            return new Outcome.Refused(tool.code() + " was measured anew since this change began, so its mass and reach"
                    + " are others now. Give the change up and begin again.");
        }
        boolean agree = all.stream()
                .allMatch(one -> CellGates.sameCode(one.toolCode(), tool.code())
                        && one.offsetMm().equals(tool.offsetMm()));
        if (!agree) {
            tell("cell.tool-readings-differ", cell, by, cell.name() + ": the readings of " + tool.code() + " differ.");
            return new Outcome.Refused(
                    "The readings do not agree with each other and with the register. All who read it"
                            + " read it again at the robot, each alone.");
        }
        // who vouches for the version is staff; the other may be anybody who is authorised at the cell
        Optional<PersonId> staff = all.stream()
                .filter(one -> readers.isStaffOnDuty(cell.id(), one.by(), one.at()))
                .map(ToolReading::by)
                .reduce((earlier, later) -> later);
        if (staff.isEmpty()) {
            return new Outcome.Refused("The readings agree and are kept. One at least of those who read is lab staff on"
                    + " duty and authorised on " + cell.name() + ": a technician or an instructor reads it too.");
        }
        PersonId other = all.stream()
                .map(ToolReading::by)
                .filter(one -> !one.equals(staff.get()))
                .findFirst()
                .orElseThrow();
        return finish(cell, row, tool, other, staff.get());
    }

    /** The two who read it stand for the version: one proposed it, the other approved it. */
    private Outcome finish(Cell cell, Row row, Equipment.Item tool, PersonId first, PersonId second) {
        String file = next(cell, tool);
        Proposed proposed = file == null
                ? new Proposed.Refused("file", "The file cannot be rewritten by itself.")
                : register.propose(new NewProposal(
                        cell.id(),
                        file,
                        "Tool change to " + tool.code() + "; offset read by two people",
                        first,
                        cell.startOffsetMinutes()));
        if (proposed instanceof Proposed.Kept kept
                && register.approve(kept.proposal().id(), second, cell.currentVersion()) instanceof Decided.Done done) {
            end(row, done.number());
            live.cellChanged(cell.id());
            return new Outcome.Done(done.number());
        }
        throw new IllegalStateException("the next version of " + cell.name() + " was refused: " + proposed);
    }

    /** The next version's file, if its facts are those of the register; null when it cannot be written so. */
    private @Nullable String next(Cell cell, Equipment.Item tool) {
        CellVersion inForce = cells.current(cell.id());
        String before = PartsText.forgetToolAlone(inForce.file());
        // the parts at the cell reach as far with another tool
        String file = FittedToolText.of(before, inForce.number() + 1, tool)
                .map(PartsText::widened)
                .orElse(null);
        boolean fits = file != null
                && files.read(file) instanceof CellFiles.CellReading.Readable readable
                && CellGates.sameCode(readable.facts().fittedTool(), tool.code())
                && readable.facts().fittedOffsetMm().equals(tool.offsetMm());
        return fits ? file : null;
    }

    @Override
    @Transactional
    public Outcome giveUp(CellId id, PersonId by) {
        Cell cell = cells.lock(id);
        Optional<Row> row = row(id);
        row.ifPresent(one -> {
            end(one, null);
            tell("cell.tool-change-given-up", cell, by, cell.name() + ": the tool change was given up.");
        });
        return row.isPresent()
                ? new Outcome.Going()
                : new Outcome.Refused("No tool change goes on at " + cell.name() + ".");
    }

    private void end(Row row, @Nullable Integer version) {
        jdbc.sql("update cell_tool_changes set open_mark = null, ended_at = :at, version = :version where id = :id")
                .param("at", SqlTime.toSql(now()))
                .param("version", version, java.sql.Types.INTEGER)
                .param("id", row.id())
                .update();
    }

    private void tell(String kind, Cell cell, PersonId by, String words) {
        live.cellChanged(cell.id());
        trail.append(TrailEntry.of(cell.lab(), kind, cell.id(), by, words));
    }

    private Instant now() {
        return SqlTime.stored(clock.instant());
    }
}
