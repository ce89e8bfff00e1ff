package org.standclear.people.accounts;

import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.standclear.people.People;
import org.standclear.people.Person;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.lab.Labs;
import org.standclear.platform.security.Role;
import org.standclear.platform.time.SqlTime;

/** Accounts for the pages that keep them: page by page, and with what only those pages may know. */
@Repository
public class AccountList {

    private final JdbcClient jdbc;
    private final People people;
    private final Labs labs;

    AccountList(JdbcClient jdbc, People people, Labs labs) {
        this.jdbc = jdbc;
        this.people = people;
        this.labs = labs;
    }

    /** The account of that person. */
    public Optional<Account> find(PersonId id) {
        return people.find(id)
                .flatMap(person -> jdbc.sql("""
                        select version, must_change_password, pin_hash is not null as has_pin, created_at
                        from people where id = :id""")
                        .param("id", id.value())
                        .query((row, number) -> new Account(
                                person,
                                row.getInt("version"),
                                row.getBoolean("must_change_password"),
                                row.getBoolean("has_pin"),
                                SqlTime.read(row, "created_at")))
                        .optional());
    }

    /** So many people of the lab by printed name that fit the filter, beginning after one of them. */
    public Page page(Filter filter, @Nullable PersonId after, int size) {
        String found = "%" + filter.find().toLowerCase(Locale.ROOT).replaceAll("([\\\\%_])", "\\\\$1") + "%";
        List<PersonId> ids = jdbc.sql("""
                select p.id from people p
                where (p.sort_name like :found escape '\\' or p.login like :found escape '\\')
                  and p.active = :active
                  and exists (select 1 from person_roles r where r.person_id = p.id and (:role = '' or r.role = :role)
                              and (r.lab_id = :here or r.role = 'ADMINISTRATOR'))
                  and (:anyone or exists (select 1 from people a where a.id = :after
                                          and (p.sort_name > a.sort_name
                                               or (p.sort_name = a.sort_name and p.id > a.id))))
                order by p.sort_name, p.id fetch first :size rows only""")
                .param("found", found)
                .param("active", !filter.closed())
                .param("role", filter.role() == null ? "" : filter.role().name())
                .param("anyone", after == null)
                .param("after", after == null ? new UUID(0, 0) : after.value())
                .param("here", labs.theLab().id().value())
                .param("size", size + 1)
                .query((row, number) -> new PersonId(row.getObject("id", UUID.class)))
                .list();
        List<Person> shown =
                List.copyOf(people.all(ids.stream().limit(size).toList()).values());
        return new Page(shown, ids.size() > size ? ids.get(size - 1) : null);
    }

    /**
     * Whom to list.
     *
     * @param find part of the printed name or the sign-in name; empty for all
     * @param role null for all
     * @param closed the closed accounts instead of the open ones
     */
    public record Filter(String find, @Nullable Role role, boolean closed) {}

    /** Some people, and after whom the next page begins; null when there is none. */
    public record Page(List<Person> people, @Nullable PersonId last) {}

    /** A person with what the account's page shows. */
    public record Account(Person person, int version, boolean mustChangePassword, boolean hasPin, Instant createdAt) {}
}
