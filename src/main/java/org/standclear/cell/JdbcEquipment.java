package org.standclear.cell;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.springframework.transaction.annotation.Transactional;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.lab.Labs;
import org.standclear.platform.time.SqlTime;
import org.standclear.trail.Trail;
import org.standclear.trail.TrailEntry;

/** The register's table: data of a row never changes, a correction is another row. */
@Repository
class JdbcEquipment implements Equipment {

    private static final double HEAVIEST_KG = 100;

    private final JdbcClient jdbc;
    private final Labs labs;
    private final Trail trail;
    private final Clock clock;

    JdbcEquipment(JdbcClient jdbc, Labs labs, Trail trail, Clock clock) {
        this.jdbc = jdbc;
        this.labs = labs;
        this.trail = trail;
        this.clock = clock;
    }

    @Override
    public List<Item> all() {
        return jdbc.sql("""
                select * from cell_equipment where lab_id = :lab and (live = 1 or approved_by is null)
                order by kind desc, code, registered_at""")
                .param("lab", labs.theLab().id().value())
                .query(JdbcEquipment::item)
                .list();
    }

    @Override
    public Optional<Item> find(UUID id) {
        return jdbc.sql("select * from cell_equipment where id = :id")
                .param("id", id)
                .query(JdbcEquipment::item)
                .optional();
    }

    @Override
    @Transactional
    public boolean inUse(UUID id) {
        return jdbc.sql("select live from cell_equipment where id = :id for update")
                .param("id", id)
                .query((row, number) -> row.getInt("live") == 1)
                .optional()
                .orElse(false);
    }

    @Override
    @Transactional
    public Kept register(Item item) {
        if (!(item.massKg() > 0 && item.massKg() <= HEAVIEST_KG)) {
            return new Kept.Refused("massKg", "A mass is above 0 and at most 100 kg.");
        }
        Double overhang = item.overhangMm();
        boolean wholeTool = item.offsetMm().size() == 3 && overhang != null && overhang >= 0;
        if (item.kind() == Kind.TOOL && !wholeTool) {
            return new Kept.Refused("offsetX", "A tool has an offset in x, y and z, and an overhang of 0 or more.");
        }
        if (overhang != null && !(overhang >= 0)) {
            return new Kept.Refused("overhangMm", "A reach or a height is 0 or more.");
        }
        boolean tool = item.kind() == Kind.TOOL;
        jdbc.sql("""
                insert into cell_equipment (id, lab_id, kind, code, name, mass_kg, offset_x_mm, offset_y_mm, offset_z_mm,
                    overhang_mm, edges, registered_by, registered_at)
                values (:id, :lab, :kind, :code, :name, :mass, :x, :y, :z, :overhang, :edges, :by, :at)""")
                .param("id", item.id())
                .param("lab", labs.theLab().id().value())
                .param("kind", item.kind().name())
                .param("code", item.code())
                .param("name", item.name())
                .param("mass", item.massKg())
                .param("x", tool ? item.offsetMm().get(0) : null, java.sql.Types.DOUBLE)
                .param("y", tool ? item.offsetMm().get(1) : null, java.sql.Types.DOUBLE)
                .param("z", tool ? item.offsetMm().get(2) : null, java.sql.Types.DOUBLE)
                .param("overhang", overhang, java.sql.Types.DOUBLE)
                .param("edges", item.edges())
                .param("by", item.registeredBy().value())
                .param("at", SqlTime.toSql(item.registeredAt()))
                .update();
        tell("cell.equipment-registered", item, item.registeredBy(), "was registered");
        return new Kept.Registered(item);
    }

    @Override
    @Transactional
    public Kept approve(UUID id, PersonId by) {
        Item item = jdbc.sql("select * from cell_equipment where id = :id for update")
                .param("id", id)
                .query(JdbcEquipment::item)
                .single();
        if (item.registeredBy().equals(by)) {
            return new Kept.Refused("", "You registered it, so another person approves it.");
        }
        if (item.approved()) {
            return new Kept.Refused("", item.code() + " is approved already.");
        }
        jdbc.sql("""
                update cell_equipment set live = null where lab_id = :lab and kind = :kind and code = :code and live = 1""")
                .param("lab", labs.theLab().id().value())
                .param("kind", item.kind().name())
                .param("code", item.code())
                .update();
        jdbc.sql("update cell_equipment set approved_by = :by, approved_at = :at, live = 1 where id = :id")
                .param("by", by.value())
                .param("at", SqlTime.toSql(clock.instant()))
                .param("id", id)
                .update();
        tell("cell.equipment-approved", item, by, "was approved");
        return new Kept.Registered(find(id).orElseThrow());
    }

    private void tell(String kind, Item item, PersonId by, String happened) {
        trail.append(TrailEntry.of(
                        labs.theLab().id(),
                        kind,
                        item.id(),
                        by,
                        "The " + item.kind().words() + " " + item.code() + " (" + item.name() + ") " + happened + ".")
                .with("mass-kg", item.massKg())
                .with("offset-mm", item.offsetMm()));
    }

    private static Item item(ResultSet row, int number) throws SQLException {
        UUID approved = row.getObject("approved_by", UUID.class);
        Kind kind = Kind.valueOf(row.getString("kind"));
        return new Item(
                row.getObject("id", UUID.class),
                kind,
                row.getString("code"),
                row.getString("name"),
                row.getDouble("mass_kg"),
                kind == Kind.TOOL
                        ? List.of(
                                row.getDouble("offset_x_mm"),
                                row.getDouble("offset_y_mm"),
                                row.getDouble("offset_z_mm"))
                        : List.of(),
                overhang(row),
                row.getBoolean("edges"),
                new PersonId(row.getObject("registered_by", UUID.class)),
                SqlTime.read(row, "registered_at"),
                approved == null ? null : new PersonId(approved));
    }

    private static @Nullable Double overhang(ResultSet row) throws SQLException {
        double value = row.getDouble("overhang_mm");
        return row.wasNull() ? null : value;
    }
}
