package org.standclear.signoff.records;

import java.util.HashSet;
import java.util.Set;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.standclear.platform.retention.Concern;
import org.standclear.platform.retention.Concern.About;

/** Whom, which run and which incidents words about a booking are about, so that a legal hold on one of them keeps the words. */
@Repository
class BookingConcerns {

    private final JdbcClient jdbc;

    BookingConcerns(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /**
     * Operator, e-stop attendant, the three of each release, everybody who took a part in its run, the run, and what was
     * reported of it, be it before any run.
     */
    Set<Concern> of(UUID booking) {
        Set<Concern> concerns = new HashSet<>();
        jdbc.sql("""
                select operator_id from bookings where id = :id
                union select attendant_id from bookings where id = :id and attendant_id is not null
                union select operator_id from signoff_releases where booking_id = :id
                union select attendant_id from signoff_releases where booking_id = :id
                union select releaser_id from signoff_releases where booking_id = :id
                union select p.person_id from run_people p join runs r on r.id = p.run_id where r.booking_id = :id""")
                .param("id", booking)
                .query(UUID.class)
                .list()
                .forEach(person -> concerns.add(Concern.person(person)));
        add(concerns, About.RUN, "select id from runs where booking_id = :id", booking);
        add(concerns, About.INCIDENT, """
                select id from incidents where booking_id = :id
                union select i.id from incidents i join runs r on r.id = i.run_id where r.booking_id = :id""", booking);
        return concerns;
    }

    /** The same of the booking that a row is about; the table's name comes from the program, never from outside. */
    Set<Concern> ofRow(String table, UUID row) {
        return jdbc.sql("select booking_id from " + table + " where id = :id and booking_id is not null")
                .param("id", row)
                .query(UUID.class)
                .optional()
                .map(this::of)
                .orElseGet(HashSet::new);
    }

    private void add(Set<Concern> concerns, About about, String sql, UUID booking) {
        jdbc.sql(sql).param("id", booking).query(UUID.class).list().forEach(id -> concerns.add(new Concern(about, id)));
    }
}
