package org.standclear.people.accounts;

import java.util.EnumSet;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.standclear.platform.ids.LabId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.security.AccountStates;
import org.standclear.platform.security.Role;

/** Reads the account of a running session anew. */
@Repository
class JdbcAccountStates implements AccountStates {

    private final JdbcClient jdbc;

    JdbcAccountStates(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    @Override
    public Optional<AccountState> of(PersonId person) {
        return jdbc.sql("""
                select p.printed_name, p.must_change_password, r.lab_id, r.role
                from people p left join person_roles r on r.person_id = p.id
                where p.id = :id and p.active""").param("id", person.value()).query(rows -> {
            AccountState state = null;
            Map<LabId, Set<Role>> roles = new HashMap<>();
            while (rows.next()) {
                @Nullable String role = rows.getString("role");
                if (role != null) {
                    roles.computeIfAbsent(
                                    new LabId(rows.getObject("lab_id", UUID.class)), lab -> EnumSet.noneOf(Role.class))
                            .add(Role.valueOf(role));
                }
                state = new AccountState(
                        rows.getString("printed_name"), roles, rows.getBoolean("must_change_password"));
            }
            return Optional.ofNullable(state);
        });
    }
}
