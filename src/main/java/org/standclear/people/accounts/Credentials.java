package org.standclear.people.accounts;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.security.crypto.password.PasswordEncoder;
import org.springframework.stereotype.Service;
import org.springframework.util.function.SingletonSupplier;
import org.standclear.people.People;
import org.standclear.people.Person;
import org.standclear.people.tries.Tries;
import org.standclear.people.tries.Tries.Begun;
import org.standclear.people.tries.Tries.Kind;
import org.standclear.platform.ids.PersonId;

/** Compares sign-in names and passwords; takes the same time whether the account exists or not. */
@Service
public class Credentials {

    private static final int LONGEST = 1000;

    private final JdbcClient jdbc;
    private final People people;
    private final PasswordEncoder encoder;
    private final Tries tries;

    /** Made at the first comparison, whoever's it is: it takes long, and the start of the application need not wait. */
    private final SingletonSupplier<String> nobodysHash;

    Credentials(JdbcClient jdbc, People people, PasswordEncoder encoder, Tries tries) {
        this.jdbc = jdbc;
        this.people = people;
        this.encoder = encoder;
        this.tries = tries;
        this.nobodysHash = SingletonSupplier.of(
                () -> String.valueOf(encoder.encode(UUID.randomUUID().toString())));
    }

    /** Whether the password is the account's; counts the try for the account. */
    public Compared compare(String login, String password) {
        String name = login.strip().toLowerCase(Locale.ROOT);
        if (tries.begin(Kind.ACCOUNT, name) instanceof Begun.Paused paused) {
            return new Compared.Paused(paused.until());
        }
        String nobodys = nobodysHash.obtain();
        @Nullable Row row = find(name);
        boolean right = encoder.matches(
                password.length() > LONGEST ? "" : PasswordRules.normal(password), row == null ? nobodys : row.hash());
        // looked for even when there is no account, so that the answer comes no sooner
        Optional<Person> person = people.find(row == null ? PersonId.next() : row.person());
        if (!right || person.isEmpty() || !person.get().active()) {
            return new Compared.Wrong();
        }
        tries.right(Kind.ACCOUNT, name);
        return new Compared.Right(person.get());
    }

    private @Nullable Row find(String login) {
        List<Row> rows = jdbc.sql("select id, password_hash from people where login = :login")
                .param("login", login)
                .query((row, number) ->
                        new Row(new PersonId(row.getObject("id", UUID.class)), row.getString("password_hash")))
                .list();
        return rows.isEmpty() ? null : rows.get(0);
    }

    private record Row(PersonId person, String hash) {}

    /** What the comparison said. */
    public sealed interface Compared {

        /** It is the account's password. */
        record Right(Person person) implements Compared {}

        /** It is not, or there is no such account, or it is closed. */
        record Wrong() implements Compared {}

        /** Nothing is compared before that instant. */
        record Paused(java.time.Instant until) implements Compared {}
    }
}
