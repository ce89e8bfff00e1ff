package org.standclear.program;

import java.nio.charset.StandardCharsets;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.standclear.cell.Cell;
import org.standclear.cell.Cells;
import org.standclear.core.program.phrases.Phrasebook;
import org.standclear.core.text.InputText;
import org.standclear.core.text.Reading;
import org.standclear.platform.digest.Sha256;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.Id;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.lab.Labs;
import org.standclear.platform.time.SqlTime;
import org.standclear.trail.Trail;
import org.standclear.trail.TrailEntry;

/** Phrasebooks as the table has them; versions are numbered under the cell's row lock. */
@Service
class JdbcPhrasebooks implements Phrasebooks {

    private final JdbcClient jdbc;
    private final Labs labs;
    private final Cells cells;
    private final Trail trail;
    private final Clock clock;

    JdbcPhrasebooks(JdbcClient jdbc, Labs labs, Cells cells, Trail trail, Clock clock) {
        this.jdbc = jdbc;
        this.labs = labs;
        this.cells = cells;
        this.trail = trail;
        this.clock = clock;
    }

    @Override
    public Optional<PhrasebookVersion> current(CellId cell) {
        return jdbc.sql("""
                select * from phrasebook_versions where cell_id = :cell order by number desc fetch first 1 rows only""")
                .param("cell", cell.value())
                .query(JdbcPhrasebooks::version)
                .optional();
    }

    @Override
    public Optional<PhrasebookVersion> version(CellId cell, int number) {
        return jdbc.sql("select * from phrasebook_versions where cell_id = :cell and number = :number")
                .param("cell", cell.value())
                .param("number", number)
                .query(JdbcPhrasebooks::version)
                .optional();
    }

    @Override
    public List<PhrasebookVersion> versions(CellId cell) {
        return jdbc.sql("select * from phrasebook_versions where cell_id = :cell order by number desc")
                .param("cell", cell.value())
                .query(JdbcPhrasebooks::version)
                .list();
    }

    @Override
    public List<PhrasebookVersion> allCurrent() {
        return jdbc.sql("""
                select b.* from phrasebook_versions b
                where b.number = (select max(n.number) from phrasebook_versions n where n.cell_id = b.cell_id)
                  and b.cell_id in (select c.id from cells c where c.lab_id = :lab)
                order by b.name, b.cell_id""")
                .param("lab", labs.theLab().id().value())
                .query(JdbcPhrasebooks::version)
                .list();
    }

    @Override
    @Transactional
    public Outcome keep(NewVersion brought) {
        Reading<Phrasebook> read = InputText.ofOther(brought.book().getBytes(StandardCharsets.UTF_8))
                .then(Phrasebook::read);
        if (read instanceof Reading.Refused<Phrasebook> refused) {
            return new Refused(Sentences.of(refused.why()));
        }
        Cell cell = cells.lock(brought.cell());
        Optional<PhrasebookVersion> latest = current(brought.cell());
        int number = latest.map(PhrasebookVersion::number).orElse(0);
        if (number != brought.basedOn()) {
            return new Refused(
                    "Somebody kept version " + number + " meanwhile. Look at it, and bring your change into it.");
        }
        String sha256 = Sha256.of(brought.book());
        if (latest.filter(version -> version.sha256().equals(sha256)).isPresent()) {
            return new Refused("Nothing changed: this is version " + number + ".");
        }
        PhrasebookVersion version = new PhrasebookVersion(
                brought.cell(),
                number + 1,
                read.value().name(),
                brought.book(),
                sha256,
                brought.reason(),
                brought.author(),
                SqlTime.stored(clock.instant()));
        add(version);
        append(cell, version);
        return new Kept(version);
    }

    private void add(PhrasebookVersion version) {
        jdbc.sql("""
                insert into phrasebook_versions (id, cell_id, number, name, book, sha256, reason, author, kept_at)
                values (:id, :cell, :number, :name, :book, :sha256, :reason, :author, :at)""")
                .param("id", Id.newValue())
                .param("cell", version.cell().value())
                .param("number", version.number())
                .param("name", version.name())
                .param("book", version.book())
                .param("sha256", version.sha256())
                .param("reason", version.reason())
                .param("author", version.author().value())
                .param("at", SqlTime.toSql(version.keptAt()))
                .update();
    }

    private void append(Cell cell, PhrasebookVersion version) {
        String words = "Version " + version.number() + " of the phrasebook \"" + version.name() + "\" was kept for "
                + cell.name();
        trail.append(TrailEntry.of(cell.lab(), "program.phrasebook-kept", cell.id(), version.author(), words)
                .with("cell", cell.id())
                .with("version", version.number())
                .with("sha256", version.sha256())
                .with("reason", version.reason()));
    }

    private static PhrasebookVersion version(ResultSet row, int rowNumber) throws SQLException {
        return new PhrasebookVersion(
                new CellId(row.getObject("cell_id", UUID.class)),
                row.getInt("number"),
                row.getString("name"),
                row.getString("book"),
                row.getString("sha256"),
                row.getString("reason"),
                new PersonId(row.getObject("author", UUID.class)),
                SqlTime.read(row, "kept_at"));
    }
}
