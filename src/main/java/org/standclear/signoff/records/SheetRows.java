package org.standclear.signoff.records;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.standclear.cell.CellHistory;
import org.standclear.platform.ids.AnswerId;
import org.standclear.platform.ids.BookingId;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.ids.RevisionId;
import org.standclear.platform.time.SqlTime;
import org.standclear.signoff.Sheet;
import org.standclear.signoff.SignoffList;

/** Rounds of the lists in the database. */
@Repository
class SheetRows {

    private final JdbcClient jdbc;
    private final SignatureRows signatures;
    private final CellHistory history;

    SheetRows(JdbcClient jdbc, SignatureRows signatures, CellHistory history) {
        this.jdbc = jdbc;
        this.signatures = signatures;
        this.history = history;
    }

    /**
     * What had been kept when a list was opened.
     *
     * @param lapse the number of the booking's last lapse; 0 when there was none
     */
    record Before(CellHistory.Kept cell, long lapse) {}

    Before before(UUID sheet) {
        return jdbc.sql("select last_tag, last_test, last_stop, last_lapse from signoff_sheets where id = :id")
                .param("id", sheet)
                .query((row, number) -> new Before(
                        new CellHistory.Kept(
                                row.getLong("last_tag"), row.getLong("last_test"), row.getLong("last_stop")),
                        row.getLong("last_lapse")))
                .single();
    }

    Optional<Sheet> find(UUID id) {
        return jdbc.sql("select * from signoff_sheets where id = :id")
                .param("id", id)
                .query(this::sheet)
                .optional();
    }

    Optional<Sheet> open(BookingId booking) {
        return jdbc.sql("select * from signoff_sheets where booking_id = :booking and open_mark = 1")
                .param("booking", booking.value())
                .query(this::sheet)
                .optional();
    }

    List<Sheet> all(BookingId booking) {
        return jdbc.sql("select * from signoff_sheets where booking_id = :booking order by round_number")
                .param("booking", booking.value())
                .query(this::sheet)
                .list();
    }

    int nextRound(BookingId booking) {
        return jdbc.sql("select coalesce(max(round_number), 0) + 1 from signoff_sheets where booking_id = :booking")
                .param("booking", booking.value())
                .query(Integer.class)
                .single();
    }

    /** Under the locks of booking and cell, so that nothing is kept between the numbers and the list. */
    void add(Sheet sheet) {
        CellHistory.Kept last = history.last(sheet.cell());
        jdbc.sql("""
                insert into signoff_sheets (id, booking_id, cell_id, round_number, list, brief, revision_id, cell_version,
                    answer_id, operator_id, attendant_id, opened_at, open_mark, last_tag, last_test, last_stop, last_lapse)
                values (:id, :booking, :cell, :round, :list, :brief, :revision, :version, :answer, :operator, :attendant,
                    :openedAt, 1, :tag, :test, :stop,
                    (select coalesce(max(l.kept_no), 0) from signoff_lapses l where l.booking_id = :booking))""")
                .param("id", sheet.id())
                .param("booking", sheet.booking().value())
                .param("cell", sheet.cell().value())
                .param("round", sheet.round())
                .param("list", sheet.list().code())
                .param("brief", sheet.brief())
                .param("revision", sheet.revision().value())
                .param("version", sheet.cellVersion())
                .param("answer", sheet.answer().value())
                .param("operator", sheet.operator().value())
                .param("attendant", sheet.attendant().value())
                .param("openedAt", SqlTime.toSql(sheet.openedAt()))
                .param("tag", last.tag())
                .param("test", last.test())
                .param("stop", last.stop())
                .update();
    }

    /** Ends a round and forgets what was entered but not signed in it. */
    void close(UUID sheet, Sheet.Outcome outcome, String because, Instant at) {
        jdbc.sql("""
                update signoff_sheets set open_mark = null, closed_at = :at, outcome = :outcome, because = :because
                where id = :id and open_mark = 1""")
                .param("at", SqlTime.toSql(at))
                .param("outcome", outcome.name())
                .param("because", because)
                .param("id", sheet)
                .update();
        jdbc.sql("delete from signoff_drafts where sheet_id = :id")
                .param("id", sheet)
                .update();
    }

    private Sheet sheet(ResultSet row, int number) throws SQLException {
        UUID id = row.getObject("id", UUID.class);
        return new Sheet(
                id,
                new BookingId(row.getObject("booking_id", UUID.class)),
                new CellId(row.getObject("cell_id", UUID.class)),
                row.getInt("round_number"),
                SignoffList.of(row.getString("list")),
                row.getBoolean("brief"),
                new RevisionId(row.getObject("revision_id", UUID.class)),
                row.getInt("cell_version"),
                new AnswerId(row.getObject("answer_id", UUID.class)),
                new PersonId(row.getObject("operator_id", UUID.class)),
                new PersonId(row.getObject("attendant_id", UUID.class)),
                SqlTime.read(row, "opened_at"),
                closed(row),
                signatures.of(id));
    }

    private static Sheet.@Nullable Closed closed(ResultSet row) throws SQLException {
        Instant at = SqlTime.readNullable(row, "closed_at");
        return at == null
                ? null
                : new Sheet.Closed(at, Sheet.Outcome.valueOf(row.getString("outcome")), row.getString("because"));
    }
}
