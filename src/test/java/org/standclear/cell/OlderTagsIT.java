package org.standclear.cell;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.UUID;
import javax.sql.DataSource;
import org.flywaydb.core.Flyway;
import org.junit.jupiter.api.Test;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.jdbc.datasource.SingleConnectionDataSource;
import org.standclear.platform.ids.CellId;
import org.standclear.testing.RealPostgres;
import org.standclear.testing.TestDatabase;

/** A tag that hung before tests and readings had numbers goes by its time after the upgrade. */
class OlderTagsIT {

    private static final String BEFORE_NUMBERS = "352";

    @Test
    void knowOnH2WhatWasKeptBeforeThem() {
        knowsWhatWasKeptBefore(TestDatabase.freshH2(), "h2", "set referential_integrity false");
    }

    @Test
    void knowOnPostgresWhatWasKeptBeforeThem() {
        knowsWhatWasKeptBefore(RealPostgres.freshDatabase(), "postgresql", "set session_replication_role = replica");
    }

    private static void knowsWhatWasKeptBefore(TestDatabase fresh, String vendor, String withoutOtherRows) {
        var source = new SingleConnectionDataSource(fresh.url(), fresh.user(), fresh.password(), true);
        JdbcClient jdbc = JdbcClient.create(source);
        UUID cell = UUID.randomUUID();
        migrate(source, vendor, BEFORE_NUMBERS);
        jdbc.sql(withoutOtherRows).update();
        for (String row : kept(cell).split(";")) {
            jdbc.sql(row).update();
        }
        migrate(source, vendor, "latest");

        CellTagRows.Before before = new CellTagRows(jdbc).before(new CellId(cell));

        assertThat(before.test()).isEqualTo(number(jdbc, "cell_day_tests", "tested_at", "09:00"));
        assertThat(before.reading()).isEqualTo(number(jdbc, "cell_tool_readings", "read_at", "09:00"));
        assertThat(new DayTestRows(jdbc).latestAfter(new CellId(cell), before.test()))
                .hasValueSatisfying(test -> assertThat(test.testedAt()).hasToString("2026-03-11T11:00:00Z"));
        source.destroy();
    }

    private static void migrate(DataSource source, String vendor, String target) {
        Flyway.configure()
                .dataSource(source)
                .locations("classpath:db/migration/common", "classpath:db/migration/" + vendor)
                .target(target)
                .load()
                .migrate();
    }

    /** A test and a reading at nine, a tag at ten, a test and a reading at eleven. */
    private static String kept(UUID cell) {
        StringBuilder sql = new StringBuilder();
        for (String time : new String[] {"09:00", "11:00"}) {
            sql.append("""
                    insert into cell_day_tests (id, cell_id, cell_version, lab_date, tested_by, tested_at, passed, failures,
                        stop_station, stayed_stopped, restarted_on_unlatching, arm_sound, power, sensitivity,
                        override_percent, tool_code, line_and_sign_in_place)
                    values ('%1$s', '%2$s', 1, date '2026-03-11', '%1$s', timestamp with time zone '2026-03-11 %3$s:00+00',
                        true, '', 'pillar', true, false, true, 'reduced', '3', 50, 'G-02', true);
                    insert into cell_tool_readings (id, cell_id, read_by, read_at, tool_code, offset_x_mm, offset_y_mm,
                        offset_z_mm)
                    values ('%1$s', '%2$s', '%1$s', timestamp with time zone '2026-03-11 %3$s:00+00', 'G-02', 0, 0, -60);
                    """.formatted(UUID.randomUUID(), cell, time));
        }
        return sql.append("""
                insert into cell_tags (id, cell_id, kind, reason, placed_by, placed_at)
                values ('%1$s', '%2$s', 'HOLD', 'look first', '%1$s', timestamp with time zone '2026-03-11 10:00:00+00')
                """.formatted(UUID.randomUUID(), cell)).toString();
    }

    private static long number(JdbcClient jdbc, String table, String column, String time) {
        return jdbc.sql("select kept_no from " + table + " where " + column + " = timestamp with time zone '2026-03-11 "
                        + time + ":00+00'")
                .query(Long.class)
                .single();
    }
}
