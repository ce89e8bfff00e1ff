package org.standclear.signoff.records;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.util.List;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.springframework.transaction.annotation.Transactional;
import org.standclear.platform.ids.LabId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.lab.Labs;
import org.standclear.platform.time.SqlTime;
import org.standclear.signoff.BenchNumbers;
import org.standclear.signoff.BenchSettings;
import org.standclear.trail.Trail;
import org.standclear.trail.TrailEntry;

/** One row per change; the highest number counts. */
@Repository
class JdbcBenchNumbers implements BenchNumbers {

    private final JdbcClient jdbc;
    private final Labs labs;
    private final Trail trail;
    private final Clock clock;

    JdbcBenchNumbers(JdbcClient jdbc, Labs labs, Trail trail, Clock clock) {
        this.jdbc = jdbc;
        this.labs = labs;
        this.trail = trail;
        this.clock = clock;
    }

    @Override
    public BenchSettings inForce() {
        return changes(1).stream().findFirst().map(Change::settings).orElse(BenchSettings.DEFAULTS);
    }

    @Override
    public List<Change> changes(int atMost) {
        return jdbc.sql(
                        "select * from signoff_settings where lab_id = :lab order by number desc fetch first :most rows only")
                .param("lab", labs.theLab().id().value())
                .param("most", atMost)
                .query((row, number) -> new Change(
                        settings(row),
                        new PersonId(row.getObject("changed_by", UUID.class)),
                        SqlTime.read(row, "changed_at"),
                        row.getString("reason")))
                .list();
    }

    @Override
    @Transactional
    public void change(BenchSettings settings, PersonId by, String reason) {
        LabId lab = labs.theLab().id();
        BenchSettings before = inForce();
        jdbc.sql("""
                insert into signoff_settings (lab_id, number, release_holds_minutes, session_opens_minutes, turn_minutes,
                    rest_minutes, first_run_minutes, look_after_stops, changed_by, changed_at, reason)
                select cast(:lab as uuid), 1 + coalesce(max(number), 0), :holds, :opens, :turn, :rest, :firstRun, :stops,
                    :by, :at, :reason
                from signoff_settings where lab_id = :lab""")
                .param("lab", lab.value())
                .param("holds", settings.releaseHoldsMinutes())
                .param("opens", settings.sessionOpensMinutes())
                .param("turn", settings.turnMinutes())
                .param("rest", settings.restMinutes())
                .param("firstRun", settings.firstRunMinutes())
                .param("stops", settings.lookAfterStops())
                .param("by", by.value())
                .param("at", SqlTime.toSql(clock.instant()))
                .param("reason", reason)
                .update();
        trail.append(
                TrailEntry.of(lab, "signoff.numbers-changed", lab, by, "Changed the numbers of the bench: " + reason)
                        .with("before", before)
                        .with("after", settings));
    }

    private static BenchSettings settings(ResultSet row) throws SQLException {
        return new BenchSettings(
                row.getInt("release_holds_minutes"),
                row.getInt("session_opens_minutes"),
                row.getInt("turn_minutes"),
                row.getInt("rest_minutes"),
                row.getInt("first_run_minutes"),
                row.getInt("look_after_stops"));
    }
}
