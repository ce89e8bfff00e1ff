package org.standclear.retention;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.springframework.transaction.support.TransactionTemplate;
import org.standclear.platform.retention.RecordKind;
import org.standclear.platform.time.SqlTime;
import org.standclear.testing.OnPostgres;

/**
 * What the page of what is due reads does not grow with what is kept: counted by the database itself, as rows that a
 * transaction read, which does not depend on how busy the machine is.
 */
@OnPostgres
@Keeping
class DueGrowthIT extends RetentionCases {

    /** Some pages of an index more, because it is deeper. */
    private static final double AS_MUCH = 1.5;

    @Test
    void readsNoMoreAmongAHundredThousandThanAmongAThousand() {
        keepOnly(RecordKind.MESSAGES, KeepingTime.years(1));
        keep(RecordKind.LOOKS, KeepingTime.years(1));
        keep(RecordKind.ACCOUNTS, KeepingTime.years(1));
        Map<String, Long> few = read(1_000);
        Map<String, Long> many = read(100_000);
        System.out.println("rows that the page of what is due reads, 1,000: " + few + ", 100,000: " + many);
        for (String table : new String[] {"messages", "people", "platform_looks"}) {
            assertThat(many.getOrDefault(table, 0L).doubleValue())
                    .as("rows of %s, %s among 1,000", table, few.get(table))
                    .isLessThanOrEqualTo(AS_MUCH * Math.max(100, few.getOrDefault(table, 0L)));
        }
    }

    /** Rows read by table, with so many messages, closed accounts and looks that are kept, and 2,000 of each that are due. */
    private Map<String, Long> read(int kept) {
        Map<String, Long> read = new TreeMap<>();
        new TransactionTemplate(transactions).executeWithoutResult(status -> {
            // what helpers read is not counted for the transaction
            jdbc.sql("set local max_parallel_workers_per_gather = 0").update();
            longAfter();
            plant(kept, 1);
            plant(2_000, 9_000);
            for (String table : new String[] {"messages", "people", "platform_looks"}) {
                jdbc.sql("analyze " + table).update();
            }
            Map<String, Long> before = rows();
            DueRecords.Counted messages = disposals.overview().kinds().stream()
                    .filter(one -> one.rule().kind() == RecordKind.MESSAGES)
                    .findFirst()
                    .orElseThrow();
            assertThat(messages.more()).isTrue();
            assertThat(messages.due()).isEqualTo(DueRecords.COUNTED);
            rows().forEach((table, rows) -> {
                long more = rows - before.getOrDefault(table, 0L);
                if (more > 0) {
                    read.put(table, more);
                }
            });
            status.setRollbackOnly();
        });
        return read;
    }

    private Map<String, Long> rows() {
        Map<String, Long> rows = new TreeMap<>();
        jdbc.sql("""
                select relname, seq_tup_read + coalesce(idx_tup_fetch, 0) as rows_read from pg_stat_xact_user_tables""").query(row -> {
            rows.put(row.getString("relname"), row.getLong("rows_read"));
        });
        return rows;
    }

    /** So many of each, so many days old. */
    private void plant(int number, int daysOld) {
        var at = SqlTime.toSql(clock.instant().minus(aDay().multipliedBy(daysOld)));
        jdbc.sql("""
                insert into messages (id, lab_id, person_id, kind, subject, body, href, created_at, mail_state, mail_until,
                    attempts, next_try_at)
                select gen_random_uuid(), :lab, :person, 'note', 'planted', 'planted', '/me', :at, 'OFF', :at, 0, :at
                from generate_series(1, :number)""")
                .param("lab", everyLab.theLab().id().value())
                .param("person", scene().noor.id().value())
                .param("at", at)
                .param("number", number)
                .update();
        jdbc.sql("""
                insert into people (id, login, printed_name, sort_name, password_hash, must_change_password, active, version,
                    created_at, closed_at, pseudonym_since)
                select gen_random_uuid(), concat('left-', gen_random_uuid()), 'Person (left)', 'person (left)', 'none', false,
                    false, 1, :at, :at, :at
                from generate_series(1, :number)""").param("at", at).param("number", number).update();
        jdbc.sql("""
                insert into platform_looks (id, lab_id, viewer, whose, sight, subject, hour_at, seen_at)
                select gen_random_uuid(), :lab, :viewer, '-', 'ROSTER', cast(gen_random_uuid() as varchar), :at, :at
                from generate_series(1, :number)""")
                .param("lab", everyLab.theLab().id().value())
                .param("viewer", ines.id().value())
                .param("at", at)
                .param("number", number)
                .update();
    }
}
