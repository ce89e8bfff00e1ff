package org.standclear.booking;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.List;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.standclear.platform.ids.CourseId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.time.SqlTime;

/** Counted by the database. */
@Repository
class JdbcPairs implements Pairs {

    private final JdbcClient jdbc;

    JdbcPairs(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    @Override
    public List<Together> ofPerson(PersonId person) {
        // in two parts, since H2 follows no index into an or
        return jdbc.sql("""
                select operator_id, attendant_id, count(*) as runs, max(starts_at) as last_at from bookings
                where operator_id = :person and attendant_id is not null and started_at is not null
                group by operator_id, attendant_id
                union all
                select operator_id, attendant_id, count(*) as runs, max(starts_at) as last_at from bookings
                where attendant_id = :person and started_at is not null
                group by operator_id, attendant_id
                order by last_at desc""")
                .param("person", person.value())
                .query(JdbcPairs::together)
                .list();
    }

    @Override
    public List<Together> ofCourse(CourseId course) {
        return jdbc.sql("""
                select b.operator_id, b.attendant_id, count(*) as runs, max(b.starts_at) as last_at from bookings b
                join people p on p.id = b.operator_id
                where b.course_id = :course and b.attendant_id is not null and b.started_at is not null
                group by b.operator_id, b.attendant_id, p.sort_name
                order by p.sort_name, runs desc""")
                .param("course", course.value())
                .query(JdbcPairs::together)
                .list();
    }

    private static Together together(ResultSet row, int number) throws SQLException {
        return new Together(
                new PersonId(row.getObject("operator_id", UUID.class)),
                new PersonId(row.getObject("attendant_id", UUID.class)),
                row.getInt("runs"),
                SqlTime.read(row, "last_at"));
    }
}
