package org.standclear.people.roster;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.JdbcTemplate;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.standclear.people.RosterImports.Gone;
import org.standclear.people.RosterImports.Preview;
import org.standclear.people.RosterImports.State;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.lab.Labs;
import org.standclear.platform.time.SqlTime;

/** Rosters, their rows and what they changed, as the tables have them. */
@Repository
class RosterRows {

    private static final int BATCH = 1000;

    private final JdbcClient jdbc;
    private final Labs labs;
    private final JdbcTemplate batches;

    RosterRows(JdbcClient jdbc, Labs labs, JdbcTemplate batches) {
        this.jdbc = jdbc;
        this.labs = labs;
        this.batches = batches;
    }

    /** A roster without its rows. */
    record Stored(
            UUID id,
            String fileName,
            State state,
            PersonId readBy,
            Instant readAt,
            @Nullable PersonId decidedBy,
            @Nullable Instant decidedAt,
            int lines) {

        /** What it changes, or has changed. */
        Preview preview(
                List<String> added,
                List<String> enrolled,
                List<Gone> takenOut,
                List<String> notes,
                String fingerprint,
                List<String> changed) {
            return new Preview(
                    id,
                    fileName,
                    state,
                    readBy,
                    readAt,
                    decidedBy,
                    decidedAt,
                    lines,
                    added,
                    enrolled,
                    takenOut,
                    notes,
                    fingerprint,
                    changed);
        }

        /** Without what it changes: a list says only what was sent, and what became of it. */
        Preview inAList() {
            return preview(List.of(), List.of(), List.of(), List.of(), "", List.of());
        }
    }

    /** One thing that applying changed. */
    record Effect(
            Kind kind,
            UUID person,
            @Nullable UUID section,
            @Nullable Instant since) {

        /** What it was. */
        enum Kind {
            ADDED,
            ENROLLED,
            TAKEN_OUT,
            TEAMED,
            ADDRESSED,
            LET_IN
        }
    }

    void insert(UUID lab, UUID id, String fileName, String sha256, PersonId by, Instant at, List<RosterRow> rows) {
        jdbc.sql("""
                insert into roster_imports (id, lab_id, file_name, file_sha256, state, read_by, read_at)
                values (:id, :lab, :name, :sha, 'READ', :by, :at)""")
                .param("id", id)
                .param("lab", lab)
                .param("name", fileName)
                .param("sha", sha256)
                .param("by", by.value())
                .param("at", SqlTime.toSql(at))
                .update();
        batches.batchUpdate("""
                insert into roster_rows (import_id, line, login, printed_name, address, course, section, team)
                values (?, ?, ?, ?, ?, ?, ?, ?)""", rows, BATCH, (insert, row) -> {
            insert.setObject(1, id);
            insert.setInt(2, row.line());
            insert.setString(3, row.login());
            insert.setString(4, row.name());
            insert.setString(5, row.address());
            insert.setString(6, row.course());
            insert.setString(7, row.section());
            insert.setString(8, row.team());
        });
    }

    Optional<Stored> find(UUID id, boolean lock) {
        return jdbc.sql("select i.*, (select count(*) from roster_rows r where r.import_id = i.id) as lines "
                        + "from roster_imports i where i.id = :id" + (lock ? " for update" : ""))
                .param("id", id)
                .query(RosterRows::stored)
                .optional();
    }

    List<Stored> latest(int atMost) {
        return jdbc.sql(
                        "select i.*, (select count(*) from roster_rows r where r.import_id = i.id) as lines "
                                + "from roster_imports i where i.lab_id = :lab order by i.read_at desc, i.id fetch first :most rows only")
                .param("most", atMost)
                .param("lab", labs.theLab().id().value())
                .query(RosterRows::stored)
                .list();
    }

    List<RosterRow> rowsOf(UUID id) {
        return jdbc.sql("select * from roster_rows where import_id = :id order by line")
                .param("id", id)
                .query((row, number) -> new RosterRow(
                        row.getInt("line"),
                        row.getString("login"),
                        row.getString("printed_name"),
                        row.getString("address"),
                        row.getString("course"),
                        row.getString("section"),
                        row.getString("team")))
                .list();
    }

    void decide(UUID id, State state, PersonId by, Instant at) {
        jdbc.sql("update roster_imports set state = :state, decided_by = :by, decided_at = :at where id = :id")
                .param("state", state.name())
                .param("by", by.value())
                .param("at", SqlTime.toSql(at))
                .param("id", id)
                .update();
    }

    void keepEffects(UUID id, List<Effect> effects) {
        List<Object[]> rows = new ArrayList<>();
        for (Effect effect : effects) {
            rows.add(new Object[] {
                id,
                rows.size() + 1,
                effect.kind().name(),
                effect.person(),
                effect.section(),
                SqlTime.toSql(effect.since())
            });
        }
        batches.batchUpdate(
                "insert into roster_effects (import_id, number, kind, person_id, section_id, since) "
                        + "values (?, ?, ?, ?, ?, ?)",
                rows,
                new int[] {
                    java.sql.Types.OTHER,
                    java.sql.Types.INTEGER,
                    java.sql.Types.VARCHAR,
                    java.sql.Types.OTHER,
                    java.sql.Types.OTHER,
                    java.sql.Types.TIMESTAMP_WITH_TIMEZONE
                });
    }

    int effects(UUID id) {
        return jdbc.sql("select count(*) from roster_effects where import_id = :id")
                .param("id", id)
                .query(Integer.class)
                .single();
    }

    private static Stored stored(ResultSet row, int number) throws SQLException {
        UUID decided = row.getObject("decided_by", UUID.class);
        return new Stored(
                row.getObject("id", UUID.class),
                row.getString("file_name"),
                State.valueOf(row.getString("state")),
                new PersonId(row.getObject("read_by", UUID.class)),
                SqlTime.read(row, "read_at"),
                decided == null ? null : new PersonId(decided),
                SqlTime.readNullable(row, "decided_at"),
                row.getInt("lines"));
    }
}
