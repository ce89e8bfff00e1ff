package org.standclear.run.records;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.util.List;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.standclear.booking.Pairs;
import org.standclear.platform.ids.CourseId;
import org.standclear.platform.ids.LabId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.time.SqlTime;

/** Counts runs by the people who were in them, and bookings that wait for theirs. */
@Repository
class JdbcPairs implements Pairs {

    private static final String AHEAD = """
            select b.operator_id, b.attendant_id, c.lab_id, count(*) as many, min(b.starts_at) as moment
            from bookings b join cells c on c.id = b.cell_id
            where %s and b.starts_at > :now and b.attendant_id is not null
              and b.state in ('BOOKED', 'CHECKED', 'READY', 'RELEASED')
            group by b.operator_id, b.attendant_id, c.lab_id
            """;

    private final JdbcClient jdbc;
    private final Clock clock;

    JdbcPairs(JdbcClient jdbc, Clock clock) {
        this.jdbc = jdbc;
        this.clock = clock;
    }

    @Override
    public List<Together> ofPerson(PersonId person) {
        // in two parts, since H2 follows no index into an or
        return jdbc.sql("""
                select o.person_id as operator_id, a.person_id as attendant_id, count(*) as many,
                    max(o.started_at) as moment
                from run_people o join run_people a on a.run_id = o.run_id and a.part = 'attendant'
                where o.person_id = :person and o.part = 'operator'
                group by o.person_id, a.person_id
                union all
                select o.person_id as operator_id, a.person_id as attendant_id, count(*) as many,
                    max(o.started_at) as moment
                from run_people a join run_people o on o.run_id = a.run_id and o.part = 'operator'
                where a.person_id = :person and a.part = 'attendant'
                group by o.person_id, a.person_id
                order by moment desc""")
                .param("person", person.value())
                .query((row, number) -> together(row))
                .list();
    }

    @Override
    public List<Together> ofCourse(CourseId course) {
        return jdbc.sql("""
                select o.person_id as operator_id, a.person_id as attendant_id, count(*) as many,
                    max(o.started_at) as moment
                from bookings b join runs r on r.booking_id = b.id
                join run_people o on o.run_id = r.id and o.part = 'operator'
                join run_people a on a.run_id = r.id and a.part = 'attendant'
                join people p on p.id = o.person_id
                where b.course_id = :course
                group by o.person_id, a.person_id, p.sort_name
                order by p.sort_name, many desc, moment desc""")
                .param("course", course.value())
                .query((row, number) -> together(row))
                .list();
    }

    @Override
    public List<Ahead> aheadOf(PersonId person) {
        return jdbc.sql(AHEAD.formatted("b.operator_id = :person") + "union all\n"
                        + AHEAD.formatted("b.attendant_id = :person") + "order by moment")
                .param("person", person.value())
                .param("now", SqlTime.toSql(clock.instant()))
                .query((row, number) -> ahead(row))
                .list();
    }

    @Override
    public List<Ahead> aheadOf(CourseId course) {
        return jdbc.sql("select x.* from (" + AHEAD.formatted("b.course_id = :course")
                        + ") x join people p on p.id = x.operator_id order by p.sort_name, x.moment")
                .param("course", course.value())
                .param("now", SqlTime.toSql(clock.instant()))
                .query((row, number) -> ahead(row))
                .list();
    }

    private static Together together(ResultSet row) throws SQLException {
        return new Together(
                person(row, "operator_id"),
                person(row, "attendant_id"),
                row.getInt("many"),
                SqlTime.read(row, "moment"));
    }

    private static Ahead ahead(ResultSet row) throws SQLException {
        return new Ahead(
                person(row, "operator_id"),
                person(row, "attendant_id"),
                new LabId(row.getObject("lab_id", UUID.class)),
                row.getInt("many"),
                SqlTime.read(row, "moment"));
    }

    private static PersonId person(ResultSet row, String column) throws SQLException {
        return new PersonId(row.getObject(column, UUID.class));
    }
}
