package org.standclear.people.accounts;

import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.standclear.people.People;
import org.standclear.people.Person;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.lab.Labs;
import org.standclear.platform.security.Role;

/** People from the database. */
@Repository
class JdbcPeople implements People {

    private static final PersonRows ROWS = new PersonRows();

    private final JdbcClient jdbc;
    private final Labs labs;

    JdbcPeople(JdbcClient jdbc, Labs labs) {
        this.jdbc = jdbc;
        this.labs = labs;
    }

    @Override
    public Optional<Person> find(PersonId id) {
        return first(asked("where p.id = :id").param("id", id.value()));
    }

    @Override
    public Optional<Person> byLogin(String login) {
        return first(
                asked("where p.login = :login").param("login", login.strip().toLowerCase(Locale.ROOT)));
    }

    @Override
    public Map<PersonId, Person> all(Collection<PersonId> ids) {
        Map<PersonId, Person> found = new LinkedHashMap<>();
        if (!ids.isEmpty()) {
            asked("where p.id in (:ids)" + PersonRows.BY_NAME)
                    .param("ids", ids.stream().map(PersonId::value).distinct().toList())
                    .query(ROWS)
                    .forEach(person -> found.put(person.id(), person));
        }
        return found;
    }

    @Override
    public List<Person> with(Role role) {
        return asked("""
                        where p.active
                          and exists (select 1 from person_roles w where w.person_id = p.id and w.role = :role
                                      and (w.lab_id = :here or w.role = 'ADMINISTRATOR'))
                        """ + PersonRows.BY_NAME).param("role", role.name()).query(ROWS);
    }

    private JdbcClient.StatementSpec asked(String conditions) {
        return jdbc.sql(PersonRows.SELECT + conditions)
                .param("here", labs.theLab().id().value());
    }

    private static Optional<Person> first(JdbcClient.StatementSpec asked) {
        return asked.query(ROWS).stream().findFirst();
    }
}
