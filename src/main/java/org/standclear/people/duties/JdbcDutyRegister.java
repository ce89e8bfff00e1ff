package org.standclear.people.duties;

import java.sql.Types;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.standclear.people.DutyRegister;
import org.standclear.people.People;
import org.standclear.people.Person;
import org.standclear.platform.ids.Id;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.lab.Labs;
import org.standclear.platform.time.SqlTime;
import org.standclear.trail.Trail;
import org.standclear.trail.TrailEntry;

/** Duty periods in the database. */
@Service
class JdbcDutyRegister implements DutyRegister {

    private static final Duration LONGEST = Duration.ofHours(16);

    private final JdbcClient jdbc;
    private final People people;
    private final Trail trail;
    private final Labs labs;
    private final Clock clock;

    JdbcDutyRegister(JdbcClient jdbc, People people, Trail trail, Labs labs, Clock clock) {
        this.jdbc = jdbc;
        this.people = people;
        this.trail = trail;
        this.labs = labs;
        this.clock = clock;
    }

    @Override
    @Transactional
    public Outcome plan(PersonId id, Instant from, Instant until, @Nullable PersonId by) {
        Person person = people.find(id).orElseThrow(() -> new IllegalArgumentException("no person " + id));
        if (!person.active() || !person.isLabStaff()) {
            return new Outcome.Refused("person", "Only technicians and instructors are on duty.");
        }
        if (!from.isBefore(until)) {
            return new Outcome.Refused("until", "The duty would end before it begins. Choose a later end.");
        }
        if (until.isAfter(from.plus(LONGEST))) {
            return new Outcome.Refused("until", "A duty lasts 16 hours at most. Plan the days one by one.");
        }
        if (isOnDutyElsewhere(id, from, until)) {
            return new Outcome.Refused("from", person.printedName() + " is on duty in another lab in that time.");
        }
        UUID period = Id.newValue();
        insert(period, id, from, until, by);
        append("people.duty_planned", person, by, planned(id, by), period, from, until);
        return new Outcome.Done(period);
    }

    /** Nobody can be asked for a release in two rooms at once. */
    private boolean isOnDutyElsewhere(PersonId person, Instant from, Instant until) {
        return jdbc.sql("""
                select count(*) from duty_periods where person_id = :person and lab_id <> :lab and removed_at is null
                and from_at < :until and :from < until_at""")
                        .param("person", person.value())
                        .param("lab", labs.theLab().id().value())
                        .param("from", SqlTime.toSql(from))
                        .param("until", SqlTime.toSql(until))
                        .query(Integer.class)
                        .single()
                > 0;
    }

    private static String planned(PersonId person, @Nullable PersonId by) {
        return person.equals(by) ? " is on duty, planned by themselves." : " is planned on duty.";
    }

    private void insert(UUID period, PersonId person, Instant from, Instant until, @Nullable PersonId by) {
        jdbc.sql("""
                insert into duty_periods (id, lab_id, person_id, from_at, until_at, planned_by, planned_at)
                values (:id, :lab, :person, :from, :until, :by, :at)""")
                .param("id", period)
                .param("lab", labs.theLab().id().value())
                .param("person", person.value())
                .param("from", SqlTime.toSql(from))
                .param("until", SqlTime.toSql(until))
                .param("by", by == null ? null : by.value(), Types.OTHER)
                .param("at", SqlTime.toSql(clock.instant()))
                .update();
    }

    @Override
    @Transactional
    public Outcome remove(UUID id, PersonId by) {
        int changed = jdbc.sql("""
                update duty_periods set removed_by = :by, removed_at = :at where id = :id and removed_at is null""")
                .param("by", by.value())
                .param("at", SqlTime.toSql(clock.instant()))
                .param("id", id)
                .update();
        if (changed == 0) {
            return new Outcome.Refused("period", "That period is not on the plan any more.");
        }
        Row row = jdbc.sql("select id, person_id, from_at, until_at, planned_by from duty_periods where id = :id")
                .param("id", id)
                .query(JdbcDutyRegister::row)
                .single();
        Person person = people.find(row.person()).orElseThrow();
        append("people.duty_removed", person, by, " is no longer planned on duty.", id, row.from(), row.until());
        return new Outcome.Done(id);
    }

    @Override
    public List<Period> between(Instant from, Instant until) {
        List<Row> rows = jdbc.sql("""
                select id, person_id, from_at, until_at, planned_by from duty_periods
                where lab_id = :lab and removed_at is null and from_at < :until and :from < until_at
                order by from_at, id""")
                .param("lab", labs.theLab().id().value())
                .param("from", SqlTime.toSql(from))
                .param("until", SqlTime.toSql(until))
                .query(JdbcDutyRegister::row)
                .list();
        Map<PersonId, Person> named = people.all(rows.stream().map(Row::person).toList());
        return rows.stream()
                .flatMap(row -> Optional.ofNullable(named.get(row.person()))
                        .map(person -> new Period(row.id(), person, row.from(), row.until(), row.plannedBy()))
                        .stream())
                .toList();
    }

    private void append(
            String kind, Person person, @Nullable PersonId by, String did, UUID period, Instant from, Instant until) {
        trail.append(TrailEntry.of(labs.theLab().id(), kind, person.id(), by, person.printedName() + did)
                .with("period", period)
                .with("from", from)
                .with("until", until));
    }

    private static Row row(java.sql.ResultSet row, int number) throws java.sql.SQLException {
        UUID by = row.getObject("planned_by", UUID.class);
        return new Row(
                row.getObject("id", UUID.class),
                new PersonId(row.getObject("person_id", UUID.class)),
                SqlTime.read(row, "from_at"),
                SqlTime.read(row, "until_at"),
                by == null ? null : new PersonId(by));
    }

    private record Row(
            UUID id,
            PersonId person,
            Instant from,
            Instant until,
            @Nullable PersonId plannedBy) {}
}
