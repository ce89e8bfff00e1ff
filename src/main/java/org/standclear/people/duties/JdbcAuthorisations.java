package org.standclear.people.duties;

import java.time.Instant;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.standclear.people.Authorisation;
import org.standclear.people.AuthorisationRegister.Granted;
import org.standclear.people.Authorisations;
import org.standclear.people.Duty;
import org.standclear.people.Person;
import org.standclear.people.accounts.PersonRows;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.lab.Labs;
import org.standclear.platform.time.SqlTime;

/** Authorisations from the database. */
@Repository
class JdbcAuthorisations implements Authorisations {

    /** A standing authorisation {@code a} for the duty and the cell at the instant. */
    private static final String STANDS = """
            a.duty = :duty and a.lab_id = :here and (a.cell_id is null or a.cell_id = :cell)
            and a.valid_from <= :at and :at < a.valid_until and (a.revoked_at is null or :at < a.revoked_at)""";

    private final JdbcClient jdbc;
    private final Labs labs;

    JdbcAuthorisations(JdbcClient jdbc, Labs labs) {
        this.jdbc = jdbc;
        this.labs = labs;
    }

    @Override
    public boolean holds(PersonId person, Duty duty, CellId cell, Instant at) {
        return asked(
                                "select count(*) from authorisations a join people p on p.id = a.person_id"
                                        + " where p.active and a.person_id = :person and " + STANDS,
                                duty,
                                cell,
                                at)
                        .param("person", person.value())
                        .query(Integer.class)
                        .single()
                > 0;
    }

    @Override
    public List<Authorisation> of(PersonId person) {
        return jdbc
                .sql(GrantedRows.SELECT + " where lab_id = :here and person_id = :person order by valid_until desc, id")
                .param("person", person.value())
                .param("here", labs.theLab().id().value())
                .query(GrantedRows::granted)
                .list()
                .stream()
                .map(Granted::authorisation)
                .toList();
    }

    @Override
    public Map<PersonId, List<Authorisation>> ofAll(Collection<PersonId> people) {
        if (people.isEmpty()) {
            return Map.of();
        }
        return jdbc
                .sql(GrantedRows.SELECT
                        + " where lab_id = :here and person_id in (:people) order by valid_until desc, id")
                .param("people", people.stream().map(PersonId::value).distinct().toList())
                .param("here", labs.theLab().id().value())
                .query(GrantedRows::granted)
                .list()
                .stream()
                .map(Granted::authorisation)
                .collect(Collectors.groupingBy(Authorisation::person));
    }

    @Override
    public List<Authorisation> ending(Instant from, Instant until) {
        return jdbc
                .sql(GrantedRows.SELECT + """
                         where id in (
                            select a.id from authorisations a join people p on p.id = a.person_id
                            where p.active and a.lab_id = :here and a.revoked_at is null and a.valid_from <= :from and a.valid_until > :from
                            and a.valid_until < :until and not exists (
                                select 1 from authorisations b where b.person_id = a.person_id and b.duty = a.duty
                                and b.lab_id = a.lab_id and b.revoked_at is null and (b.cell_id is null or b.cell_id = a.cell_id)
                                and b.valid_from <= a.valid_until and b.valid_until > a.valid_until))
                        order by valid_until, id""")
                .param("here", labs.theLab().id().value())
                .param("from", SqlTime.toSql(from))
                .param("until", SqlTime.toSql(until))
                .query(GrantedRows::granted)
                .list()
                .stream()
                .map(Granted::authorisation)
                .toList();
    }

    @Override
    public List<Person> holders(Duty duty, CellId cell, Instant at) {
        return asked(
                        PersonRows.SELECT
                                + "where p.active and exists (select 1 from authorisations a where a.person_id = p.id and "
                                + STANDS + ")" + PersonRows.BY_NAME,
                        duty,
                        cell,
                        at)
                .query(new PersonRows());
    }

    private JdbcClient.StatementSpec asked(String sql, Duty duty, CellId cell, Instant at) {
        return jdbc.sql(sql)
                .param("here", labs.theLab().id().value())
                .param("duty", duty.name())
                .param("cell", cell.value())
                .param("at", SqlTime.toSql(at));
    }
}
