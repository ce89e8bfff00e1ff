package org.standclear.retention;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.UUID;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.dao.DataAccessException;
import org.springframework.transaction.support.TransactionTemplate;
import org.standclear.incident.IncidentCases;
import org.standclear.incident.IncidentClass;
import org.standclear.message.Message;
import org.standclear.message.Messages;
import org.standclear.people.PeopleRegister;
import org.standclear.people.Person;
import org.standclear.platform.ids.IncidentId;
import org.standclear.platform.lab.Labs;
import org.standclear.platform.retention.RecordKind;
import org.standclear.platform.security.Role;
import org.standclear.platform.time.SqlTime;
import org.standclear.retention.Disposals.MonthList;
import org.standclear.retention.Disposals.Outcome;
import org.standclear.retention.DueRecords.DueRecord;
import org.standclear.trail.Trail;
import org.standclear.trail.TrailVerification;

/** What tests of keeping and disposing share; each test has a month of its own, long after everything. */
abstract class RetentionCases extends IncidentCases {

    private static final AtomicInteger MONTHS = new AtomicInteger();

    /** Each in a month of its own, in years that no test reaches. */
    private static final AtomicInteger OTHER_LISTS = new AtomicInteger();

    private static final Instant FAR = Instant.parse("2100-01-15T12:00:00Z");

    @Autowired
    KeepingRules rules;

    @Autowired
    Shortenings shortenings;

    @Autowired
    DueRecords due;

    @Autowired
    LegalHolds holds;

    @Autowired
    Disposals disposals;

    @Autowired
    Messages messages;

    @Autowired
    PeopleRegister register;

    @Autowired
    Trail theTrail;

    @Autowired
    Labs everyLab;

    Person marit;

    @BeforeEach
    void anAdministrator() {
        marit = scene().lab.person("Marit Sallow", Role.ADMINISTRATOR);
    }

    /** Keeps one kind for that time, and all the others for good. */
    void keepOnly(RecordKind kind, KeepingTime time) {
        Stream.of(RecordKind.values()).forEach(one -> keep(one, one == kind ? time : KeepingTime.forGood()));
    }

    void keep(RecordKind kind, KeepingTime time) {
        KeepingRule now = rules.inForce(kind);
        if (time.isShorterThan(now.time())) {
            var waits = is(
                    Shortenings.Proposed.Waits.class,
                    shortenings.propose(kind, time, now.number(), marit.id(), "a test"));
            assertThat(shortenings.approve(waits.id(), ines.id())).isEmpty();
        } else if (!now.time().equals(time)) {
            assertThat(rules.change(kind, time, now.number(), marit.id(), "a test"))
                    .isTrue();
        }
    }

    /** Long after, in a month that no other test has. */
    void longAfter() {
        clock.moveTo(
                FAR.atZone(ZoneOffset.UTC).plusMonths(MONTHS.incrementAndGet()).toInstant());
    }

    boolean isDue(RecordKind kind, UUID id) {
        return dueOf(kind).records().stream().map(DueRecord::id).anyMatch(id::equals);
    }

    DueRecords.Due dueOf(RecordKind kind) {
        return due.now().stream().filter(one -> one.kind() == kind).findFirst().orElseThrow();
    }

    UUID told(Person person, String subject) {
        new TransactionTemplate(transactions)
                .executeWithoutResult(
                        status -> messages.tell(Message.of(person.id(), "note", subject, List.of("A line."), "/me")));
        return jdbc.sql("select id from messages where person_id = :person and subject = :subject")
                .param("person", person.id().value())
                .param("subject", subject)
                .query(UUID.class)
                .single();
    }

    int count(String table, String column, UUID id) {
        return jdbc.sql("select count(*) from " + table + " where " + column + " = :id")
                .param("id", id)
                .query(Integer.class)
                .single();
    }

    /** Approves what is due now, and waits until the list may be carried out. */
    UUID approved() {
        UUID list = approvedJustNow();
        clock.moveTo(disposals.find(list).orElseThrow().carriedOutFrom());
        return list;
    }

    /** Approves what is due now. */
    UUID approvedJustNow() {
        Outcome outcome = disposals.approve(disposals.preview().fingerprint(), marit.id());
        return is(Outcome.Approved.class, outcome).list();
    }

    MonthList carriedOut(UUID list) {
        while (disposals.carryOut(50) > 0) {
            assertThat(disposals.find(list)).isPresent();
        }
        MonthList done = disposals.find(list).orElseThrow();
        assertThat(done.finishedAt()).isNotNull();
        assertTrailIsWhole();
        return done;
    }

    /** Disposes of the record at the end of a year. */
    void disposedAfter(RecordKind kind, UUID id) {
        keepOnly(kind, KeepingTime.years(1));
        longAfter();
        assertThat(isDue(kind, id)).as("%s is due", kind).isTrue();
        carriedOut(approved());
        assertThat(isDue(kind, id)).as("%s is due again", kind).isFalse();
    }

    /** The only answer that is no fault. */
    void assertTrailIsWhole() {
        TrailVerification verified = theTrail.verify(everyLab.theLab().id());
        assertThat(verified).isInstanceOf(TrailVerification.Whole.class);
    }

    /** An incident with a medical note, closed now. */
    IncidentId closedIncident() {
        IncidentId id = reported(IncidentClass.NEAR_MISS);
        done(reports.fill(id, IncidentClass.NEAR_MISS, FORM, scene().hemi.id()));
        closeNow(id);
        return id;
    }

    void closeAccount(Person person) {
        assertThat(register.deactivate(person.id(), "left the college", marit.id()))
                .isInstanceOf(PeopleRegister.Outcome.Done.class);
    }

    UUID hold(LegalHold.Target target) {
        return holds.place(target, "A claim is expected.", "Legal office, file 7", ines.id());
    }

    static Duration aDay() {
        return Duration.ofDays(1);
    }

    /** Closes it now, whatever its review still lacks. */
    void closeNow(IncidentId id) {
        jdbc.sql("update incidents set state = 'CLOSED', closed_at = :at where id = :id")
                .param("at", SqlTime.toSql(clock.instant()))
                .param("id", id.value())
                .update();
    }

    /** The database refuses it, because no disposal of the same transaction says so. */
    void refused(String sql, UUID id) {
        assertThatThrownBy(() -> jdbc.sql(sql).param("id", id).update())
                .isInstanceOf(DataAccessException.class)
                .hasMessageContaining("written down");
    }

    /** A line of a list that says so, from a transaction that is over. */
    void writtenDownInAnotherTransaction(String kind, UUID record) {
        UUID list = UUID.randomUUID();
        jdbc.sql("""
                insert into retention_lists (id, lab_id, month_code, fingerprint, records, approved_by, approved_at,
                    carry_out_from, finished_at) values (:id, :lab, :month, 'none', 1, :by, :at, :at, :at)""")
                .param("id", list)
                .param("lab", everyLab.theLab().id().value())
                .param("month", "%04d-01".formatted(5000 + OTHER_LISTS.incrementAndGet()))
                .param("by", marit.id().value())
                .param("at", SqlTime.toSql(clock.instant()))
                .update();
        jdbc.sql("""
                insert into retention_items (list_id, number, kind, record_id, clock_start, rule_number, rule_words,
                    state, because, settled_at, transaction_mark)
                values (:list, 1, :kind, :record, :at, 0, 'none', 'DONE', '', :at, transaction_id())""")
                .param("list", list)
                .param("kind", kind)
                .param("record", record)
                .param("at", SqlTime.toSql(clock.instant()))
                .update();
    }

    List<String> text(String sql, IncidentId id) {
        return jdbc.sql(sql).param("id", id.value()).query(String.class).list();
    }
}
