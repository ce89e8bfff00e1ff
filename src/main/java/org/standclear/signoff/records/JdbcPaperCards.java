package org.standclear.signoff.records;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.List;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.springframework.transaction.annotation.Transactional;
import org.standclear.cell.Cell;
import org.standclear.cell.Cells;
import org.standclear.people.People;
import org.standclear.people.Person;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.lab.Labs;
import org.standclear.platform.time.LabTime;
import org.standclear.platform.time.SqlTime;
import org.standclear.signoff.PaperCards;
import org.standclear.trail.Trail;
import org.standclear.trail.TrailEntry;

/** The table of cards from paper; a card is typed once and never changed. */
@Repository
class JdbcPaperCards implements PaperCards {

    private final JdbcClient jdbc;
    private final Cells cells;
    private final People people;
    private final Labs labs;
    private final Trail trail;
    private final LabTime labTime;

    JdbcPaperCards(JdbcClient jdbc, Cells cells, People people, Labs labs, Trail trail, LabTime labTime) {
        this.jdbc = jdbc;
        this.cells = cells;
        this.people = people;
        this.labs = labs;
        this.trail = trail;
        this.labTime = labTime;
    }

    @Override
    public List<PaperCard> latest(int atMost) {
        return jdbc.sql("""
                select * from signoff_paper_cards where lab_id = :lab order by written_at desc, id desc
                fetch first :most rows only""")
                .param("lab", labs.theLab().id().value())
                .param("most", atMost)
                .query(JdbcPaperCards::card)
                .list();
    }

    @Override
    @Transactional
    public Typed type(PaperCard card) {
        if (card.writtenAt().isAfter(card.typedAt())) {
            return new Typed.Refused("time", "That is still to come. Write when the card was signed.");
        }
        if (card.operator().equals(card.attendant())
                || card.operator().equals(card.releaser())
                || card.attendant().equals(card.releaser())) {
            return new Typed.Refused("releaser", "Operator, e-stop attendant and releaser are three people.");
        }
        if (people.find(card.releaser()).filter(Person::isLabStaff).isEmpty()) {
            return new Typed.Refused("releaser", "Only a technician or an instructor releases, on paper too.");
        }
        add(card);
        String cell = cells.find(card.cell()).map(Cell::name).orElse("A cell");
        trail.append(TrailEntry.of(
                        labs.theLab().id(),
                        "signoff.paper-card-typed-late",
                        card.cell(),
                        card.typedBy(),
                        "Late entry: " + people.printedName(card.typedBy()) + " typed in a paper card of " + cell
                                + ", signed " + labTime.full(card.writtenAt()) + ". " + card.happened())
                .with("attendant", card.attendant())
                .with("card", card.id())
                .with("operator", card.operator())
                .with("releaser", card.releaser())
                .with("written-at", card.writtenAt()));
        return new Typed.Kept(card);
    }

    private void add(PaperCard card) {
        jdbc.sql("""
                insert into signoff_paper_cards (id, lab_id, cell_id, written_at, operator_id, attendant_id, releaser_id,
                    program, fingerprint_end, power, override_percent, sensitivity, tool_code, passes, happened, typed_by,
                    typed_at)
                values (:id, :lab, :cell, :written, :operator, :attendant, :releaser, :program, :end, :power, :override,
                    :sensitivity, :tool, :passes, :happened, :by, :at)""")
                .param("id", card.id())
                .param("lab", labs.theLab().id().value())
                .param("cell", card.cell().value())
                .param("written", SqlTime.toSql(card.writtenAt()))
                .param("operator", card.operator().value())
                .param("attendant", card.attendant().value())
                .param("releaser", card.releaser().value())
                .param("program", card.program())
                .param("end", card.fingerprintEnd())
                .param("power", card.power())
                .param("override", card.overridePercent())
                .param("sensitivity", card.sensitivity())
                .param("tool", card.toolCode())
                .param("passes", card.passes())
                .param("happened", card.happened())
                .param("by", card.typedBy().value())
                .param("at", SqlTime.toSql(card.typedAt()))
                .update();
    }

    private static PaperCard card(ResultSet row, int number) throws SQLException {
        return new PaperCard(
                row.getObject("id", UUID.class),
                new CellId(row.getObject("cell_id", UUID.class)),
                SqlTime.read(row, "written_at"),
                new PersonId(row.getObject("operator_id", UUID.class)),
                new PersonId(row.getObject("attendant_id", UUID.class)),
                new PersonId(row.getObject("releaser_id", UUID.class)),
                row.getString("program"),
                row.getString("fingerprint_end"),
                row.getString("power"),
                row.getDouble("override_percent"),
                row.getString("sensitivity"),
                row.getString("tool_code"),
                row.getString("passes"),
                row.getString("happened"),
                new PersonId(row.getObject("typed_by", UUID.class)),
                SqlTime.read(row, "typed_at"));
    }
}
