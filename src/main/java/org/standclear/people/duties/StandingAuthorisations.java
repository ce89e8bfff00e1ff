package org.standclear.people.duties;

import java.util.Collection;
import java.util.List;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.standclear.people.AuthorisationRegister.Granted;
import org.standclear.platform.ids.PersonId;

/** Granted authorisations of many people at once, for the matrix. */
@Repository
public class StandingAuthorisations {

    private final JdbcClient jdbc;

    StandingAuthorisations(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** All that were ever granted to these people, latest end first. */
    public List<Granted> of(Collection<PersonId> people) {
        if (people.isEmpty()) {
            return List.of();
        }
        return jdbc.sql(GrantedRows.SELECT + " where person_id in (:people) order by valid_until desc, id")
                .param("people", people.stream().map(PersonId::value).toList())
                .query(GrantedRows::granted)
                .list();
    }
}
