package org.standclear.retention.records;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.standclear.platform.ids.LabId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.retention.RecordKind;
import org.standclear.platform.time.SqlTime;
import org.standclear.retention.Disposals.LogLine;

/** Records on lists while these are carried out, and the log of what became of them. */
@Repository
class ItemRows {

    private final JdbcClient jdbc;

    ItemRows(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** A record on a list. */
    record Item(UUID list, int number, RecordKind kind, UUID record) {}

    /** What became of a record. */
    enum State {
        DONE,
        KEPT,
        GONE,
        FAILED
    }

    /** A list that is not finished; nobody else carries it out, and no hold is placed, until the transaction ends. */
    Optional<UUID> lockOpenList(LabId lab) {
        return jdbc.sql("""
                select id from retention_lists where lab_id = :lab and finished_at is null
                order by approved_at, id fetch first row only for update skip locked""").param("lab", lab.value()).query(UUID.class).optional();
    }

    /** Waits until no list is being carried out. */
    void waitForOpenLists(LabId lab) {
        jdbc.sql("select id from retention_lists where lab_id = :lab and finished_at is null order by id for update")
                .param("lab", lab.value())
                .query(UUID.class)
                .list();
    }

    List<Item> pending(UUID list, int most) {
        return jdbc.sql("""
                select list_id, number, kind, record_id from retention_items
                where list_id = :list and state = 'PENDING' order by number fetch first :most rows only""")
                .param("list", list)
                .param("most", most)
                .query(ItemRows::item)
                .list();
    }

    private static Item item(ResultSet row, int rowNumber) throws SQLException {
        return new Item(
                row.getObject("list_id", UUID.class),
                row.getInt("number"),
                RecordKind.valueOf(row.getString("kind")),
                row.getObject("record_id", UUID.class));
    }

    void settle(Item item, State state, String because, Instant at) {
        jdbc.sql("""
                update retention_items set state = :state, because = :because, settled_at = :at
                where list_id = :list and number = :number""")
                .param("state", state.name())
                .param("because", because)
                .param("at", SqlTime.toSql(at))
                .param("list", item.list())
                .param("number", item.number())
                .update();
        if (state == State.DONE) {
            // by itself and afterwards: H2 names a transaction only once it has changed something
            jdbc.sql("""
                    update retention_items set transaction_mark = transaction_id()
                    where list_id = :list and number = :number""")
                    .param("list", item.list())
                    .param("number", item.number())
                    .update();
        }
    }

    void finish(UUID list, Instant at) {
        jdbc.sql("update retention_lists set finished_at = :at where id = :id")
                .param("at", SqlTime.toSql(at))
                .param("id", list)
                .update();
        jdbc.sql("""
                insert into retention_disposals (list_id, kind, rule_number, rule_words, disposed, kept_back, gone, failed,
                    earliest_start, latest_start, approved_by, approved_at, finished_at)
                select i.list_id, i.kind, i.rule_number, i.rule_words,
                    sum(case when i.state = 'DONE' then 1 else 0 end), sum(case when i.state = 'KEPT' then 1 else 0 end),
                    sum(case when i.state = 'GONE' then 1 else 0 end), sum(case when i.state = 'FAILED' then 1 else 0 end),
                    min(i.clock_start), max(i.clock_start), l.approved_by, l.approved_at, l.finished_at
                from retention_items i join retention_lists l on l.id = i.list_id where i.list_id = :id
                group by i.list_id, i.kind, i.rule_number, i.rule_words, l.approved_by, l.approved_at, l.finished_at""").param("id", list).update();
    }

    List<LogLine> log(LabId lab) {
        return jdbc.sql("""
                select d.*, l.month_code from retention_disposals d join retention_lists l on l.id = d.list_id
                where l.lab_id = :lab order by l.month_code desc, d.kind, d.rule_number""")
                .param("lab", lab.value())
                .query((row, number) -> new LogLine(
                        row.getString("month_code"),
                        RecordKind.valueOf(row.getString("kind")),
                        row.getString("rule_words"),
                        row.getInt("disposed"),
                        row.getInt("kept_back"),
                        row.getInt("gone"),
                        row.getInt("failed"),
                        SqlTime.read(row, "earliest_start"),
                        SqlTime.read(row, "latest_start"),
                        new PersonId(row.getObject("approved_by", UUID.class)),
                        SqlTime.read(row, "approved_at"),
                        SqlTime.read(row, "finished_at")))
                .list();
    }
}
