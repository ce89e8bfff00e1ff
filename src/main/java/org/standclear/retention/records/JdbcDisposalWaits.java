package org.standclear.retention.records;

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
import org.standclear.retention.DisposalWaits;
import org.standclear.retention.WaitingTime;
import org.standclear.trail.Trail;
import org.standclear.trail.TrailEntry;

/** One row per change; the highest number counts. */
@Repository
class JdbcDisposalWaits implements DisposalWaits {

    /** More changes than that within {@link #MOST} days are not looked at: the record shows them. */
    private static final int LOOKED_AT = 200;

    private final JdbcClient jdbc;
    private final Labs labs;
    private final Trail trail;
    private final Clock clock;

    JdbcDisposalWaits(JdbcClient jdbc, Labs labs, Trail trail, Clock clock) {
        this.jdbc = jdbc;
        this.labs = labs;
        this.trail = trail;
        this.clock = clock;
    }

    @Override
    public Wait inForce() {
        return WaitingTime.at(clock.instant(), changes(LOOKED_AT));
    }

    @Override
    public List<Change> changes(int atMost) {
        return jdbc.sql("""
                select * from retention_waits where lab_id = :lab order by number desc fetch first :most rows only""")
                .param("lab", labs.theLab().id().value())
                .param("most", atMost)
                .query((row, number) -> new Change(
                        row.getInt("number"),
                        row.getInt("days"),
                        new PersonId(row.getObject("changed_by", UUID.class)),
                        SqlTime.read(row, "changed_at"),
                        row.getString("reason")))
                .list();
    }

    @Override
    @Transactional
    public boolean change(int days, int seenNumber, PersonId by, String reason) {
        LabId lab = labs.theLab().id();
        List<Change> before = changes(1);
        int was = before.isEmpty() ? STANDARD : before.get(0).days();
        if ((before.isEmpty() ? 0 : before.get(0).number()) != seenNumber) {
            return false;
        }
        // the key of the next number lets one of two win who change it at the same time
        jdbc.sql("""
                insert into retention_waits (lab_id, number, days, changed_by, changed_at, reason)
                values (:lab, :number, :days, :by, :at, :reason)""")
                .param("lab", lab.value())
                .param("number", seenNumber + 1)
                .param("days", days)
                .param("by", by.value())
                .param("at", SqlTime.toSql(clock.instant()))
                .param("reason", reason)
                .update();
        trail.append(TrailEntry.of(
                        lab,
                        "retention.wait-changed",
                        lab.toString(),
                        by,
                        "Changed the days between a disposal list’s approval and its carrying out: " + days + ".")
                .with("before", was)
                .with("after", days)
                .with("reason", reason));
        return true;
    }
}
