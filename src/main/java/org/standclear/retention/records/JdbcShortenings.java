package org.standclear.retention.records;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.time.Instant;
import java.time.Period;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.standclear.people.People;
import org.standclear.platform.ids.Id;
import org.standclear.platform.ids.LabId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.lab.Labs;
import org.standclear.platform.retention.RecordKind;
import org.standclear.platform.time.SqlTime;
import org.standclear.retention.KeepingRule;
import org.standclear.retention.KeepingTime;
import org.standclear.retention.Shortenings;
import org.standclear.trail.Trail;
import org.standclear.trail.TrailEntry;

/** Proposals in the database; the database, too, refuses an approval by who proposed. */
@Service
@Transactional
class JdbcShortenings implements Shortenings {

    private final JdbcClient jdbc;
    private final JdbcKeepingRules rules;
    private final People people;
    private final Labs labs;
    private final Trail trail;
    private final Clock clock;

    JdbcShortenings(JdbcClient jdbc, JdbcKeepingRules rules, People people, Labs labs, Trail trail, Clock clock) {
        this.jdbc = jdbc;
        this.rules = rules;
        this.people = people;
        this.labs = labs;
        this.trail = trail;
        this.clock = clock;
    }

    @Override
    @Transactional(readOnly = true)
    public List<Proposal> open() {
        return jdbc.sql("""
                select * from retention_proposals where lab_id = :lab and state = 'OPEN' order by proposed_at, id""")
                .param("lab", lab().value())
                .query(JdbcShortenings::proposal)
                .list();
    }

    @Override
    @Transactional(readOnly = true)
    public Optional<Proposal> find(UUID id) {
        return jdbc.sql("select * from retention_proposals where id = :id and lab_id = :lab")
                .param("id", id)
                .param("lab", lab().value())
                .query(JdbcShortenings::proposal)
                .optional();
    }

    private static Proposal proposal(ResultSet row, int number) throws SQLException {
        UUID decider = row.getObject("decided_by", UUID.class);
        return new Proposal(
                row.getObject("id", UUID.class),
                RecordKind.valueOf(row.getString("kind")),
                row.getInt("seen_number"),
                new KeepingTime(Period.parse(row.getString("period")), row.getBoolean("from_year_end")),
                row.getString("reason"),
                new PersonId(row.getObject("proposed_by", UUID.class)),
                SqlTime.read(row, "proposed_at"),
                decider == null
                        ? null
                        : new Decided(
                                row.getString("state").equals("APPROVED"),
                                new PersonId(decider),
                                SqlTime.read(row, "decided_at"),
                                row.getString("decision_reason")));
    }

    @Override
    public Proposed propose(RecordKind kind, KeepingTime time, int seenNumber, PersonId by, String reason) {
        KeepingRule now = rules.inForce(kind);
        if (now.number() != seenNumber) {
            return new Proposed.Stale();
        }
        if (!time.isShorterThan(now.time())) {
            throw new IllegalArgumentException("not shorter than " + now.time().words() + ": " + time.words());
        }
        boolean waits = open().stream().anyMatch(one -> one.kind() == kind && one.seenNumber() == seenNumber);
        if (waits) {
            return new Proposed.Refused("A shorter time is proposed already. It is decided on first.");
        }
        UUID id = Id.newValue();
        jdbc.sql("""
                insert into retention_proposals (id, lab_id, kind, seen_number, period, from_year_end, reason, proposed_by,
                    proposed_at, state)
                values (:id, :lab, :kind, :seen, :period, :yearEnd, :reason, :by, :at, 'OPEN')""")
                .param("id", id)
                .param("lab", lab().value())
                .param("kind", kind.name())
                .param("seen", seenNumber)
                .param("period", Objects.requireNonNull(time.period()).toString())
                .param("yearEnd", time.fromYearEnd())
                .param("reason", reason)
                .param("by", by.value())
                .param("at", SqlTime.toSql(now()))
                .update();
        trail.append(TrailEntry.of(
                        lab(),
                        "retention.shortening-proposed",
                        id,
                        by,
                        people.printedName(by) + " proposed to keep for a shorter time: " + kind.words() + ", "
                                + time.words() + ".")
                .with("before", now.words())
                .with("proposed", time.words())
                .with("reason", reason));
        return new Proposed.Waits(id);
    }

    @Override
    @Transactional(readOnly = true)
    public Optional<String> whyNotApprove(Proposal proposal, PersonId by) {
        if (!proposal.isOpen()) {
            return Optional.of("It was decided on already.");
        }
        if (proposal.by().equals(by)) {
            return Optional.of("You proposed it. A second person approves it.");
        }
        return rules.inForce(proposal.kind()).number() == proposal.seenNumber()
                ? Optional.empty()
                : Optional.of("Another time was put in force since it was proposed. Put it aside and propose anew.");
    }

    @Override
    public Optional<String> approve(UUID id, PersonId by) {
        Proposal proposal = find(id).orElseThrow();
        Optional<String> whyNot = whyNotApprove(proposal, by);
        if (whyNot.isPresent()) {
            return whyNot;
        }
        if (!decide(id, "APPROVED", "", by)) {
            return Optional.of("It was decided on already.");
        }
        rules.putInForce(proposal, by);
        return Optional.empty();
    }

    @Override
    public Optional<String> reject(UUID id, String reason, PersonId by) {
        Proposal proposal = find(id).orElseThrow();
        if (!decide(id, "REJECTED", reason, by)) {
            return Optional.of("It was decided on already.");
        }
        trail.append(TrailEntry.of(
                        lab(),
                        "retention.shortening-rejected",
                        id,
                        by,
                        people.printedName(by) + " put aside a shorter time of keeping: "
                                + proposal.kind().words() + ", "
                                + proposal.time().words() + ".")
                .with("reason", reason));
        return Optional.empty();
    }

    private boolean decide(UUID id, String state, String reason, PersonId by) {
        return jdbc.sql("""
                update retention_proposals set state = :state, decided_by = :by, decided_at = :at, decision_reason = :reason
                where id = :id and state = 'OPEN'""")
                        .param("state", state)
                        .param("by", by.value())
                        .param("at", SqlTime.toSql(now()))
                        .param("reason", reason)
                        .param("id", id)
                        .update()
                == 1;
    }

    private LabId lab() {
        return labs.theLab().id();
    }

    private Instant now() {
        return SqlTime.stored(clock.instant());
    }
}
