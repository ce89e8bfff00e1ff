package org.standclear.people.accounts;

import java.sql.Types;
import java.time.Clock;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.security.crypto.password.PasswordEncoder;
import org.springframework.stereotype.Repository;
import org.standclear.people.PeopleRegister.Password;
import org.standclear.people.Person;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.lab.Labs;
import org.standclear.platform.security.Role;
import org.standclear.platform.time.SqlTime;

/** The rows of accounts, changed inside a running transaction. */
@Repository
class AccountRows {

    private final JdbcClient jdbc;
    private final PasswordEncoder encoder;
    private final Labs labs;
    private final Clock clock;

    AccountRows(JdbcClient jdbc, PasswordEncoder encoder, Labs labs, Clock clock) {
        this.jdbc = jdbc;
        this.labs = labs;
        this.encoder = encoder;
        this.clock = clock;
    }

    /** Stores a person; false when somebody has the sign-in name. */
    boolean insert(Person person, Password password) {
        boolean taken = jdbc.sql("select count(*) from people where login = :login")
                        .param("login", person.login())
                        .query(Integer.class)
                        .single()
                > 0;
        if (taken) {
            return false;
        }
        jdbc.sql("""
                insert into people (id, login, printed_name, sort_name, password_hash, must_change_password,
                    active, version, created_at)
                values (:id, :login, :name, :sort, :hash, :mustChange, true, 1, :at)""")
                .param("id", person.id().value())
                .param("login", person.login())
                .param("name", person.printedName())
                .param("sort", person.printedName().toLowerCase(Locale.ROOT))
                .param("hash", hash(password))
                .param("mustChange", password instanceof Password.Temporary)
                .param("at", SqlTime.toSql(clock.instant()))
                .update();
        insertRoles(person.id(), person.roles());
        return true;
    }

    /**
     * The account, whose row nobody else changes until the transaction ends. A plain lock, which waits for whoever
     * stores a role, an authorisation or a token of the person just now: what is decided about the account is decided with it.
     */
    Stored lock(PersonId id) {
        List<Integer> version = jdbc.sql("select version from people where id = :id for update")
                .param("id", id.value())
                .query(Integer.class)
                .list();
        if (version.isEmpty()) {
            throw new IllegalArgumentException("no person " + id);
        }
        return new Stored(person(id), version.get(0));
    }

    Person person(PersonId id) {
        return jdbc.sql(PersonRows.SELECT + "where p.id = :id")
                .param("id", id.value())
                .param("here", here())
                .query(new PersonRows())
                .get(0);
    }

    /** How many active administrators there are; none of them changes until the transaction ends. */
    int lockedAdministrators() {
        return jdbc.sql("""
                select p.id from people p
                where p.active
                  and exists (select 1 from person_roles r where r.person_id = p.id and r.role = 'ADMINISTRATOR')
                order by p.id for update""").query(UUID.class).list().size();
    }

    /** Whether the person has a part in another lab than the present one. */
    boolean isElsewhere(PersonId id) {
        return jdbc.sql("select count(*) from person_roles where person_id = :id and lab_id <> :here")
                        .param("id", id.value())
                        .param("here", here())
                        .query(Integer.class)
                        .single()
                > 0;
    }

    /** The roles in the present lab; an administrator is one in every lab. */
    void setRoles(PersonId id, Set<Role> roles) {
        jdbc.sql("delete from person_roles where person_id = :id and (lab_id = :here or role = 'ADMINISTRATOR')")
                .param("id", id.value())
                .param("here", here())
                .update();
        insertRoles(id, roles);
        jdbc.sql("update people set version = version + 1 where id = :id")
                .param("id", id.value())
                .update();
    }

    private void insertRoles(PersonId id, Set<Role> roles) {
        for (Role role : roles) {
            jdbc.sql("insert into person_roles (person_id, lab_id, role) values (:id, :here, :role)")
                    .param("id", id.value())
                    .param("here", here())
                    .param("role", role.name())
                    .update();
        }
    }

    private UUID here() {
        return labs.theLab().id().value();
    }

    void setActive(PersonId id, boolean active) {
        jdbc.sql("update people set active = :active, closed_at = :closed, version = version + 1 where id = :id")
                .param("active", active)
                .param("closed", active ? null : SqlTime.toSql(clock.instant()), Types.TIMESTAMP_WITH_TIMEZONE)
                .param("id", id.value())
                .update();
    }

    /** Whether the name was replaced by a pseudonym. */
    boolean isPseudonym(PersonId id) {
        return jdbc.sql("select count(*) from people where id = :id and pseudonym_since is not null")
                        .param("id", id.value())
                        .query(Integer.class)
                        .single()
                > 0;
    }

    void setPassword(PersonId id, Password password) {
        jdbc.sql("""
                update people set password_hash = :hash, must_change_password = :mustChange, version = version + 1
                where id = :id""")
                .param("hash", hash(password))
                .param("mustChange", password instanceof Password.Temporary)
                .param("id", id.value())
                .update();
    }

    private String hash(Password password) {
        if (password instanceof Password.Hashed hashed) {
            return hashed.hash();
        }
        String raw = password instanceof Password.Chosen chosen ? chosen.raw() : ((Password.Temporary) password).raw();
        return String.valueOf(encoder.encode(PasswordRules.normal(raw)));
    }

    /** A person with the version of the account. */
    record Stored(Person person, int version) {}
}
