package org.standclear.people.accounts;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.ResultSetExtractor;
import org.standclear.people.Person;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.security.Role;

/** Reads people from rows that repeat the person for each role; keeps the order of the rows. */
public final class PersonRows implements ResultSetExtractor<List<Person>> {

    /**
     * What to select, from where; add conditions on {@code p} and an order. {@code :here} is the lab whose roles count;
     * an administrator is one everywhere.
     */
    public static final String SELECT = """
            select p.id, p.login, p.printed_name, p.active, r.role
            from people p left join person_roles r
              on r.person_id = p.id and (r.lab_id = :here or r.role = 'ADMINISTRATOR')
            """;

    /** The order of lists of people. */
    public static final String BY_NAME = " order by p.sort_name, p.id";

    @Override
    public List<Person> extractData(ResultSet row) throws SQLException {
        Map<UUID, Row> people = new LinkedHashMap<>();
        while (row.next()) {
            UUID id = row.getObject("id", UUID.class);
            Row person = people.get(id);
            if (person == null) {
                person = new Row(
                        id,
                        row.getString("login"),
                        row.getString("printed_name"),
                        row.getBoolean("active"),
                        EnumSet.noneOf(Role.class));
                people.put(id, person);
            }
            @Nullable String role = row.getString("role");
            if (role != null) {
                person.roles.add(Role.valueOf(role));
            }
        }
        List<Person> read = new ArrayList<>();
        people.values().forEach(person -> read.add(person.person()));
        return read;
    }

    private record Row(UUID id, String login, String printedName, boolean active, Set<Role> roles) {

        Person person() {
            return new Person(new PersonId(id), login, printedName, roles, active);
        }
    }
}
