package org.standclear.signoff.records;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.springframework.transaction.annotation.Transactional;
import org.standclear.booking.Booking;
import org.standclear.booking.Bookings;
import org.standclear.cell.Cell;
import org.standclear.cell.CellVersion;
import org.standclear.cell.Cells;
import org.standclear.people.People;
import org.standclear.platform.ids.BookingId;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.lab.Labs;
import org.standclear.platform.time.LabTime;
import org.standclear.platform.time.SqlTime;
import org.standclear.signoff.PaperCards;
import org.standclear.signoff.rules.PaperRules;
import org.standclear.trail.Trail;
import org.standclear.trail.TrailEntry;

/** The table of cards from paper; a card is typed once and never changed. */
@Repository
class JdbcPaperCards implements PaperCards {

    private final JdbcClient jdbc;
    private final Cells cells;
    private final Bookings bookings;
    private final People people;
    private final Labs labs;
    private final Trail trail;
    private final LabTime labTime;
    private final Clock clock;

    JdbcPaperCards(
            JdbcClient jdbc,
            Cells cells,
            Bookings bookings,
            People people,
            Labs labs,
            Trail trail,
            LabTime labTime,
            Clock clock) {
        this.jdbc = jdbc;
        this.cells = cells;
        this.bookings = bookings;
        this.people = people;
        this.labs = labs;
        this.trail = trail;
        this.labTime = labTime;
        this.clock = clock;
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
    public List<PaperCard> of(BookingId booking) {
        return jdbc.sql("select * from signoff_paper_cards where booking_id = :booking order by written_at, id")
                .param("booking", booking.value())
                .query(JdbcPaperCards::card)
                .list();
    }

    @Override
    public List<PaperCard> of(PersonId person) {
        return jdbc.sql("""
                select * from signoff_paper_cards where operator_id = :person or attendant_id = :person
                    or releaser_id = :person order by written_at desc, id desc""")
                .param("person", person.value())
                .query(JdbcPaperCards::card)
                .list();
    }

    @Override
    public List<Booking> bookings(CellId cell, Instant since) {
        return bookings.all(jdbc.sql("""
                        select id from bookings where cell_id = :cell and starts_at >= :since and starts_at <= :now
                            and state not in ('CANCELLED', 'MOVED_BY_STAFF')""")
                .param("cell", cell.value())
                .param("since", SqlTime.toSql(since))
                .param("now", SqlTime.toSql(clock.instant()))
                .query((row, number) -> new BookingId(row.getObject("id", UUID.class)))
                .list());
    }

    @Override
    public String words(PaperCard card) {
        return "On paper, " + labTime.full(card.writtenAt()) + ": " + people.printedName(card.operator())
                + " with " + people.printedName(card.attendant()) + " at the e-stop, released by "
                + people.printedName(card.releaser()) + ". " + card.program() + ", fingerprint ending in "
                + card.fingerprintEnd() + ", " + card.power() + " power, " + card.overridePercent() + " %, tool "
                + card.toolCode() + ", passes " + card.passes() + ". " + card.happened() + " Typed in late by "
                + people.printedName(card.typedBy()) + ", " + labTime.full(card.typedAt()) + ".";
    }

    @Override
    @Transactional
    public Typed type(PaperCard card) {
        BookingId named = card.booking();
        List<CellVersion> versions = cells.versions(card.cell());
        Optional<Typed> refused = versions.isEmpty()
                ? Optional.of(new Typed.Refused("", "There is no such cell."))
                : PaperRules.refusal(new PaperRules.Question(
                        card,
                        people.find(card.operator()).orElse(null),
                        people.find(card.attendant()).orElse(null),
                        people.find(card.releaser()).orElse(null),
                        named == null ? null : bookings.find(named).orElse(null),
                        versions.get(versions.size() - 1).inForceSince()));
        if (refused.isPresent()) {
            return refused.get();
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
                .with("booking", card.booking() == null ? "" : card.booking().toString())
                .with("card", card.id())
                .with("operator", card.operator())
                .with("releaser", card.releaser())
                .with("written-at", card.writtenAt()));
        return new Typed.Kept(card);
    }

    private void add(PaperCard card) {
        jdbc.sql("""
                insert into signoff_paper_cards (id, lab_id, cell_id, booking_id, written_at, operator_id, attendant_id,
                    releaser_id, program, fingerprint_end, power, override_percent, sensitivity, tool_code, passes, happened, typed_by,
                    typed_at)
                values (:id, :lab, :cell, :booking, :written, :operator, :attendant, :releaser, :program, :end, :power, :override,
                    :sensitivity, :tool, :passes, :happened, :by, :at)""")
                .param("id", card.id())
                .param("lab", labs.theLab().id().value())
                .param("cell", card.cell().value())
                .param("booking", card.booking() == null ? null : card.booking().value())
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
        UUID booking = row.getObject("booking_id", UUID.class);
        return new PaperCard(
                row.getObject("id", UUID.class),
                new CellId(row.getObject("cell_id", UUID.class)),
                booking == null ? null : new BookingId(booking),
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
