package org.standclear.signoff.records;

import java.util.HashSet;
import java.util.Set;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.standclear.platform.retention.Concern;
import org.standclear.platform.retention.Concern.About;

/** Whom and which run words about a booking are about, so that a legal hold on one of them keeps the words. */
@Repository
class BookingConcerns {

    private final JdbcClient jdbc;

    BookingConcerns(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** Operator, e-stop attendant, everybody who took a part in its run, and the run. */
    Set<Concern> of(UUID booking) {
        Set<Concern> concerns = new HashSet<>();
        jdbc.sql("""
                select operator_id from bookings where id = :id
                union select attendant_id from bookings where id = :id and attendant_id is not null
                union select p.person_id from run_people p join runs r on r.id = p.run_id where r.booking_id = :id""")
                .param("id", booking)
                .query(UUID.class)
                .list()
                .forEach(person -> concerns.add(Concern.person(person)));
        jdbc.sql("select id from runs where booking_id = :id")
                .param("id", booking)
                .query(UUID.class)
                .list()
                .forEach(run -> concerns.add(new Concern(About.RUN, run)));
        return concerns;
    }
}
