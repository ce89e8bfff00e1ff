package org.standclear.people.duties;

import java.time.Instant;
import java.util.List;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.standclear.people.DutyRoster;
import org.standclear.people.Person;
import org.standclear.people.accounts.PersonRows;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.lab.Labs;
import org.standclear.platform.time.SqlTime;

/** Who is on duty, from the planned periods; somebody who lost the staff role or the account is not. */
@Repository
class JdbcDutyRoster implements DutyRoster {

    private static final String ON_DUTY = """
            where p.active
              and exists (select 1 from person_roles s
                          where s.person_id = p.id and s.role in ('TECHNICIAN', 'INSTRUCTOR')
                            and s.lab_id = :here)
              and exists (select 1 from duty_periods d
                          where d.person_id = p.id and d.lab_id = :here and d.removed_at is null
                            and d.from_at <= :at and :at < d.until_at)
            """;

    private final JdbcClient jdbc;
    private final Labs labs;

    JdbcDutyRoster(JdbcClient jdbc, Labs labs) {
        this.jdbc = jdbc;
        this.labs = labs;
    }

    @Override
    public boolean onDuty(PersonId person, Instant at) {
        return jdbc.sql("select count(*) from people p " + ON_DUTY + " and p.id = :person")
                        .param("at", SqlTime.toSql(at))
                        .param("here", labs.theLab().id().value())
                        .param("person", person.value())
                        .query(Integer.class)
                        .single()
                > 0;
    }

    @Override
    public List<Person> onDuty(Instant at) {
        return jdbc.sql(PersonRows.SELECT + ON_DUTY + PersonRows.BY_NAME)
                .param("at", SqlTime.toSql(at))
                .param("here", labs.theLab().id().value())
                .query(new PersonRows());
    }
}
