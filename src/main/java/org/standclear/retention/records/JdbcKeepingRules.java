package org.standclear.retention.records;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Types;
import java.time.Clock;
import java.time.Period;
import java.util.List;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.springframework.transaction.annotation.Transactional;
import org.standclear.platform.ids.LabId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.lab.Labs;
import org.standclear.platform.retention.RecordKind;
import org.standclear.platform.time.SqlTime;
import org.standclear.retention.DefaultTimes;
import org.standclear.retention.KeepingRule;
import org.standclear.retention.KeepingRules;
import org.standclear.retention.KeepingTime;
import org.standclear.retention.Shortenings.Proposal;
import org.standclear.trail.Trail;
import org.standclear.trail.TrailEntry;

/** One row per change; the highest number of a kind counts. */
@Repository
class JdbcKeepingRules implements KeepingRules {

    private final JdbcClient jdbc;
    private final Labs labs;
    private final Trail trail;
    private final Clock clock;

    JdbcKeepingRules(JdbcClient jdbc, Labs labs, Trail trail, Clock clock) {
        this.jdbc = jdbc;
        this.labs = labs;
        this.trail = trail;
        this.clock = clock;
    }

    @Override
    public KeepingRule inForce(RecordKind kind) {
        return changes(kind, 1).stream()
                .findFirst()
                .map(Change::rule)
                .orElseGet(() -> new KeepingRule(kind, 0, DefaultTimes.of(kind)));
    }

    @Override
    public List<Change> changes(RecordKind kind, int atMost) {
        return jdbc.sql("""
                select r.*, p.decided_by as approved_by from retention_rules r
                left join retention_proposals p on p.lab_id = r.lab_id and p.kind = r.kind and p.state = 'APPROVED'
                    and p.seen_number = r.number - 1
                where r.lab_id = :lab and r.kind = :kind order by r.number desc fetch first :most rows only""")
                .param("lab", labs.theLab().id().value())
                .param("kind", kind.name())
                .param("most", atMost)
                .query(JdbcKeepingRules::change)
                .list();
    }

    private static Change change(ResultSet row, int number) throws SQLException {
        String period = row.getString("period");
        UUID approver = row.getObject("approved_by", UUID.class);
        return new Change(
                new KeepingRule(
                        RecordKind.valueOf(row.getString("kind")),
                        row.getInt("number"),
                        new KeepingTime(period == null ? null : Period.parse(period), row.getBoolean("from_year_end"))),
                new PersonId(row.getObject("changed_by", UUID.class)),
                approver == null ? null : new PersonId(approver),
                SqlTime.read(row, "changed_at"),
                row.getString("reason"));
    }

    @Override
    @Transactional
    public boolean change(RecordKind kind, KeepingTime time, int seenNumber, PersonId by, String reason) {
        KeepingRule before = inForce(kind);
        if (before.number() != seenNumber) {
            return false;
        }
        if (time.isShorterThan(before.time())) {
            throw new IllegalArgumentException("a shorter time takes a second person: " + time.words());
        }
        LabId lab = labs.theLab().id();
        insert(lab, new KeepingRule(kind, seenNumber + 1, time), by, reason);
        trail.append(changed(lab, before, time, by).with("reason", reason));
        return true;
    }

    /** Puts a shorter time in force that a second person approved, who has changed the proposal in this transaction. */
    void putInForce(Proposal proposal, PersonId approver) {
        LabId lab = labs.theLab().id();
        KeepingRule before = inForce(proposal.kind());
        insert(
                lab,
                new KeepingRule(proposal.kind(), proposal.seenNumber() + 1, proposal.time()),
                proposal.by(),
                proposal.reason());
        trail.append(changed(lab, before, proposal.time(), approver)
                .with("proposed by", proposal.by())
                .with("reason", proposal.reason()));
    }

    private void insert(LabId lab, KeepingRule rule, PersonId by, String reason) {
        KeepingTime time = rule.time();
        // the key of the next number lets one of two win who change it at the same time
        jdbc.sql("""
                insert into retention_rules (lab_id, kind, number, period, from_year_end, changed_by, changed_at, reason)
                values (:lab, :kind, :number, :period, :yearEnd, :by, :at, :reason)""")
                .param("lab", lab.value())
                .param("kind", rule.kind().name())
                .param("number", rule.number())
                .param("period", time.period() == null ? null : time.period().toString(), Types.VARCHAR)
                .param("yearEnd", time.fromYearEnd())
                .param("by", by.value())
                .param("at", SqlTime.toSql(clock.instant()))
                .param("reason", reason)
                .update();
    }

    private static TrailEntry changed(LabId lab, KeepingRule before, KeepingTime time, PersonId by) {
        return TrailEntry.of(
                        lab,
                        "retention.rule-changed",
                        before.kind().name(),
                        by,
                        "Changed how long is kept: " + before.kind().words() + ", " + time.words() + ".")
                .with("before", before.words())
                .with("after", time.words());
    }
}
