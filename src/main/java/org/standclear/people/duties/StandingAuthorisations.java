package org.standclear.people.duties;

import java.util.Collection;
import java.util.List;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.standclear.people.AuthorisationRegister.Granted;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.lab.Labs;

/** Granted authorisations of many people at once, for the matrix. */
@Repository
public class StandingAuthorisations {

    private final JdbcClient jdbc;
    private final Labs labs;

    StandingAuthorisations(JdbcClient jdbc, Labs labs) {
        this.jdbc = jdbc;
        this.labs = labs;
    }

    /** All that were ever granted to these people in the lab, latest end first. */
    public List<Granted> of(Collection<PersonId> people) {
        if (people.isEmpty()) {
            return List.of();
        }
        return jdbc.sql(GrantedRows.SELECT
                        + " where lab_id = :lab and person_id in (:people) order by valid_until desc, id")
                .param("people", people.stream().map(PersonId::value).toList())
                .param("lab", labs.theLab().id().value())
                .query(GrantedRows::granted)
                .list();
    }
}
