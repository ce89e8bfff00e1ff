package org.standclear.people.accounts;

import java.sql.Types;
import java.time.Clock;
import java.util.Optional;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.standclear.people.Accommodations;
import org.standclear.platform.ids.Id;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.lab.Labs;
import org.standclear.platform.time.SqlTime;
import org.standclear.trail.Trail;
import org.standclear.trail.TrailEntry;

/** Accommodations in the database; ended ones stay as history. */
@Service
class JdbcAccommodations implements Accommodations {

    private final JdbcClient jdbc;
    private final Trail trail;
    private final Labs labs;
    private final Clock clock;

    JdbcAccommodations(JdbcClient jdbc, Trail trail, Labs labs, Clock clock) {
        this.jdbc = jdbc;
        this.trail = trail;
        this.labs = labs;
        this.clock = clock;
    }

    @Override
    @Transactional(readOnly = true)
    public Optional<Accommodation> of(PersonId person) {
        return jdbc.sql("select * from accommodations where person_id = :person and ended_at is null "
                        + "order by set_at desc, id desc fetch first row only")
                .param("person", person.value())
                .query((row, number) -> new Accommodation(
                        row.getInt("slot_minutes"), row.getBoolean("lower_bench"), row.getBoolean("helper")))
                .optional();
    }

    @Override
    @Transactional
    public Optional<String> set(PersonId person, Accommodation wanted, PersonId by) {
        int minutes = wanted.slotMinutes();
        if (minutes != 0 && (minutes < 10 || minutes > 240)) {
            return Optional.of("Write 10 to 240 minutes, or leave it empty for the usual length.");
        }
        var now = SqlTime.toSql(clock.instant());
        jdbc.sql(
                        "update accommodations set ended_by = :by, ended_at = :at where person_id = :person and ended_at is null")
                .param("by", by.value())
                .param("at", now)
                .param("person", person.value())
                .update();
        if (!wanted.equals(Accommodation.NONE)) {
            jdbc.sql("""
                    insert into accommodations (id, person_id, slot_minutes, lower_bench, helper, set_by, set_at)
                    values (:id, :person, :minutes, :bench, :helper, :by, :at)""")
                    .param("id", Id.newValue())
                    .param("person", person.value())
                    .param("minutes", minutes == 0 ? null : minutes, Types.INTEGER)
                    .param("bench", wanted.lowerBench())
                    .param("helper", wanted.helper())
                    .param("by", by.value())
                    .param("at", now)
                    .update();
        }
        // more people read the record than need to know: it says that something changed, and not what
        trail.append(TrailEntry.of(
                labs.theLab().id(),
                "people.arrangement-changed",
                person,
                by,
                "Changed what the lab does for a person"));
        return Optional.empty();
    }
}
