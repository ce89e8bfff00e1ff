package org.standclear.cell;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.time.SqlTime;

/** The table of day tests; the later one is the one recorded later, whatever the clock said. */
@Repository
class DayTestRows {

    private final JdbcClient jdbc;

    DayTestRows(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    Optional<DayTest> latest(CellId cell, Instant at) {
        return jdbc.sql("""
                select * from cell_day_tests where cell_id = :cell and tested_at <= :at
                order by kept_no desc fetch first 1 rows only""")
                .param("cell", cell.value())
                .param("at", SqlTime.toSql(at))
                .query(DayTestRows::test)
                .optional();
    }

    /** The latest of those recorded after the numbered one. */
    Optional<DayTest> latestAfter(CellId cell, long keptNo) {
        return jdbc.sql("""
                select * from cell_day_tests where cell_id = :cell and kept_no > :after
                order by kept_no desc fetch first 1 rows only""")
                .param("cell", cell.value())
                .param("after", keptNo)
                .query(DayTestRows::test)
                .optional();
    }

    Optional<DayTest> lastOf(CellId cell, LocalDate date) {
        return jdbc.sql("""
                select * from cell_day_tests where cell_id = :cell and lab_date = :date
                order by kept_no desc fetch first 1 rows only""")
                .param("cell", cell.value())
                .param("date", date)
                .query(DayTestRows::test)
                .optional();
    }

    List<DayTest> recent(CellId cell, int atMost) {
        return jdbc.sql("""
                select * from cell_day_tests where cell_id = :cell
                order by kept_no desc fetch first :most rows only""")
                .param("cell", cell.value())
                .param("most", atMost)
                .query(DayTestRows::test)
                .list();
    }

    Optional<DayTest> lastBefore(CellId cell, LocalDate date) {
        return jdbc.sql("""
                select * from cell_day_tests where cell_id = :cell and lab_date < :date
                order by kept_no desc fetch first 1 rows only""")
                .param("cell", cell.value())
                .param("date", date)
                .query(DayTestRows::test)
                .optional();
    }

    void add(DayTest test, String whySameStation) {
        DayTestReadings read = test.readings();
        jdbc.sql("""
                insert into cell_day_tests (id, cell_id, cell_version, lab_date, tested_by, tested_at, passed, failures,
                    stop_station, stayed_stopped, restarted_on_unlatching, arm_sound, power, sensitivity,
                    override_percent, tool_code, line_and_sign_in_place, station_reason)
                values (:id, :cell, :version, :date, :by, :at, :passed, :failures, :station, :stayed, :restarted,
                    :sound, :power, :sensitivity, :override, :tool, :line, :stationReason)""")
                .param("id", test.id())
                .param("cell", test.cell().value())
                .param("version", test.cellVersion())
                .param("date", test.date())
                .param("by", test.testedBy().value())
                .param("at", SqlTime.toSql(test.testedAt()))
                .param("passed", test.passed())
                .param("failures", String.join("\n", test.failures()))
                .param("station", read.stopStation())
                .param("stayed", read.stayedStopped())
                .param("restarted", read.restartedOnUnlatching())
                .param("sound", read.armSound())
                .param("power", read.power())
                .param("sensitivity", read.sensitivity())
                .param("override", read.overridePercent())
                .param("tool", read.toolCode())
                .param("line", read.lineAndSignInPlace())
                .param("stationReason", whySameStation)
                .update();
    }

    private static DayTest test(ResultSet row, int number) throws SQLException {
        return new DayTest(
                row.getObject("id", UUID.class),
                new CellId(row.getObject("cell_id", UUID.class)),
                row.getInt("cell_version"),
                row.getObject("lab_date", LocalDate.class),
                new PersonId(row.getObject("tested_by", UUID.class)),
                SqlTime.read(row, "tested_at"),
                row.getString("failures").lines().toList(),
                new DayTestReadings(
                        row.getString("stop_station"),
                        row.getBoolean("stayed_stopped"),
                        row.getBoolean("restarted_on_unlatching"),
                        row.getBoolean("arm_sound"),
                        row.getString("power"),
                        row.getString("sensitivity"),
                        row.getDouble("override_percent"),
                        row.getString("tool_code"),
                        row.getBoolean("line_and_sign_in_place")));
    }
}
