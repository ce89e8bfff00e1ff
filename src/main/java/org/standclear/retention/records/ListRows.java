package org.standclear.retention.records;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Types;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.JdbcTemplate;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.standclear.platform.ids.LabId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.retention.RecordKind;
import org.standclear.platform.time.SqlTime;
import org.standclear.retention.Disposals.MonthList;
import org.standclear.retention.Disposals.Settled;
import org.standclear.retention.Disposals.Stopped;
import org.standclear.retention.DueRecords.Due;
import org.standclear.retention.DueRecords.DueRecord;

/** The tables of approved lists and what is on them. */
@Repository
class ListRows {

    private static final int REASONS = 3;

    private final JdbcClient jdbc;
    private final JdbcTemplate batches;

    ListRows(JdbcClient jdbc, JdbcTemplate batches) {
        this.jdbc = jdbc;
        this.batches = batches;
    }

    /** A list without what became of it; {@code from} is the end of its wait. */
    record NewList(
            UUID id, LabId lab, String month, String fingerprint, int records, PersonId by, Instant at, Instant from) {}

    void insert(NewList list, List<Due> due) {
        jdbc.sql("""
                insert into retention_lists (id, lab_id, month_code, fingerprint, records, approved_by, approved_at,
                    carry_out_from)
                values (:id, :lab, :month, :fingerprint, :records, :by, :at, :from)""")
                .param("id", list.id())
                .param("lab", list.lab().value())
                .param("month", list.month())
                .param("fingerprint", list.fingerprint())
                .param("records", list.records())
                .param("by", list.by().value())
                .param("at", SqlTime.toSql(list.at()))
                .param("from", SqlTime.toSql(list.from()))
                .update();
        List<Object[]> rows = new ArrayList<>();
        for (Due one : due) {
            for (DueRecord record : one.records()) {
                rows.add(new Object[] {
                    list.id(),
                    rows.size() + 1,
                    one.kind().name(),
                    record.id(),
                    SqlTime.toSql(record.clockStart()),
                    one.rule().number(),
                    one.rule().words()
                });
            }
        }
        batches.batchUpdate(
                "insert into retention_items (list_id, number, kind, record_id, clock_start, rule_number, rule_words, "
                        + "state, because) values (?, ?, ?, ?, ?, ?, ?, 'PENDING', '')",
                rows,
                new int[] {
                    Types.OTHER,
                    Types.INTEGER,
                    Types.VARCHAR,
                    Types.OTHER,
                    Types.TIMESTAMP_WITH_TIMEZONE,
                    Types.INTEGER,
                    Types.VARCHAR
                });
    }

    Optional<MonthList> ofMonth(LabId lab, String month) {
        return jdbc.sql("select * from retention_lists where lab_id = :lab and month_code = :month")
                .param("lab", lab.value())
                .param("month", month)
                .query(this::list)
                .optional();
    }

    Optional<MonthList> find(UUID id) {
        return jdbc.sql("select * from retention_lists where id = :id")
                .param("id", id)
                .query(this::list)
                .optional();
    }

    List<MonthList> latest(LabId lab, int atMost) {
        return jdbc.sql("""
                select * from retention_lists where lab_id = :lab
                order by month_code desc fetch first :most rows only""")
                .param("lab", lab.value())
                .param("most", atMost)
                .query(this::list)
                .list();
    }

    private MonthList list(ResultSet row, int number) throws SQLException {
        UUID id = row.getObject("id", UUID.class);
        List<Settled> kinds = settled(id);
        int pending = kinds.stream().mapToInt(Settled::pending).sum();
        return new MonthList(
                id,
                row.getString("month_code"),
                row.getInt("records"),
                row.getInt("records") - pending,
                new PersonId(row.getObject("approved_by", UUID.class)),
                SqlTime.read(row, "approved_at"),
                SqlTime.read(row, "carry_out_from"),
                stopped(row),
                SqlTime.readNullable(row, "finished_at"),
                kinds);
    }

    private static @Nullable Stopped stopped(ResultSet row) throws SQLException {
        UUID by = row.getObject("stopped_by", UUID.class);
        return by == null
                ? null
                : new Stopped(new PersonId(by), SqlTime.read(row, "stopped_at"), row.getString("stop_reason"));
    }

    void stop(UUID list, Stopped stopped) {
        jdbc.sql("""
                update retention_lists set stopped_by = :by, stopped_at = :at, stop_reason = :reason where id = :id""")
                .param("by", stopped.by().value())
                .param("at", SqlTime.toSql(stopped.at()))
                .param("reason", stopped.reason())
                .param("id", list)
                .update();
    }

    private List<Settled> settled(UUID list) {
        return jdbc.sql("""
                select kind, sum(case when state = 'PENDING' then 1 else 0 end) as pending,
                    sum(case when state = 'DONE' then 1 else 0 end) as done,
                    sum(case when state = 'KEPT' then 1 else 0 end) as kept,
                    sum(case when state = 'GONE' then 1 else 0 end) as gone,
                    sum(case when state = 'FAILED' then 1 else 0 end) as failed
                from retention_items where list_id = :list group by kind order by min(number)""")
                .param("list", list)
                .query((row, number) -> new Settled(
                        RecordKind.valueOf(row.getString("kind")),
                        row.getInt("pending"),
                        row.getInt("done"),
                        row.getInt("kept"),
                        row.getInt("gone"),
                        row.getInt("failed"),
                        reasons(list, row.getString("kind"))))
                .list();
    }

    private List<String> reasons(UUID list, String kind) {
        return jdbc.sql("""
                select because from retention_items where list_id = :list and kind = :kind and because <> ''
                group by because order by count(*) desc, because fetch first :most rows only""")
                .param("list", list)
                .param("kind", kind)
                .param("most", REASONS)
                .query(String.class)
                .list();
    }
}
