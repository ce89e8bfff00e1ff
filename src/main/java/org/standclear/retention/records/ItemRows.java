package org.standclear.retention.records;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
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

    private static final int AT_ONCE = 1_000;
    private static final String PENDING = "PENDING";

    private final JdbcClient jdbc;

    ItemRows(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** A record on a list. */
    record Item(UUID list, int number, RecordKind kind, UUID record) {}

    /** A record that stands on a list and is still there; {@code because} says why it stays, once that is settled. */
    record Standing(Item item, Instant clockStart, boolean pending, String because) {}

    /** What became of a record. */
    enum State {
        DONE,
        KEPT,
        GONE,
        FAILED
    }

    /**
     * A list whose wait is over and that is not finished; nobody else carries it out, and no hold is placed, until the
     * transaction ends.
     */
    Optional<UUID> lockOpenList(LabId lab, Instant now) {
        return jdbc.sql("""
                select id from retention_lists where lab_id = :lab and finished_at is null and carry_out_from <= :now
                order by approved_at, id fetch first row only for update skip locked""")
                .param("lab", lab.value())
                .param("now", SqlTime.toSql(now))
                .query(UUID.class)
                .optional();
    }

    /** Locks that list while it is not finished, after waiting for a batch that is under way. */
    boolean lockToStop(LabId lab, UUID list) {
        return jdbc.sql("""
                        select id from retention_lists where id = :id and lab_id = :lab and finished_at is null for update""")
                .param("id", list)
                .param("lab", lab.value())
                .query(UUID.class)
                .optional()
                .isPresent();
    }

    /** Which of these records are on a list that is not finished. */
    Set<UUID> waiting(LabId lab, RecordKind kind, List<UUID> records) {
        Set<UUID> waiting = new HashSet<>();
        for (int from = 0; from < records.size(); from += AT_ONCE) {
            waiting.addAll(jdbc.sql("""
                    select i.record_id from retention_items i join retention_lists l on l.id = i.list_id
                    where i.record_id in (:ids) and i.kind = :kind and i.state = 'PENDING' and l.lab_id = :lab
                        and l.finished_at is null""")
                    .param("ids", records.subList(from, Math.min(records.size(), from + AT_ONCE)))
                    .param("kind", kind.name())
                    .param("lab", lab.value())
                    .query(UUID.class)
                    .list());
        }
        return waiting;
    }

    /** Leaves everything that is still pending on a list where it is. */
    void keepTheRest(UUID list, String because, Instant at) {
        jdbc.sql("""
                update retention_items set state = 'KEPT', because = :because, settled_at = :at
                where list_id = :list and state = 'PENDING'""")
                .param("because", because)
                .param("at", SqlTime.toSql(at))
                .param("list", list)
                .update();
    }

    /** What stands on a list and is not gone, in its order, after a number. */
    List<Standing> standing(UUID list, int after, int most) {
        return jdbc.sql("""
                select * from retention_items where list_id = :list and number > :after
                    and state in ('PENDING', 'KEPT', 'FAILED') order by number fetch first :most rows only""")
                .param("list", list)
                .param("after", after)
                .param("most", most)
                .query((row, number) -> new Standing(
                        item(row, number),
                        SqlTime.read(row, "clock_start"),
                        row.getString("state").equals(PENDING),
                        row.getString("because")))
                .list();
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
