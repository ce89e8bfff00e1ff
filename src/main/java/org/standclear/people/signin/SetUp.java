package org.standclear.people.signin;

import java.time.Clock;
import java.time.Instant;
import java.util.Locale;
import java.util.Set;
import org.springframework.core.env.Environment;
import org.springframework.core.env.Profiles;
import org.springframework.dao.DuplicateKeyException;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.standclear.people.PeopleRegister;
import org.standclear.people.PeopleRegister.NewPerson;
import org.standclear.people.PeopleRegister.Password;
import org.standclear.people.Person;
import org.standclear.people.tries.Tries;
import org.standclear.people.tries.Tries.Begun;
import org.standclear.people.tries.Tries.Kind;
import org.standclear.platform.digest.Sha256;
import org.standclear.platform.lab.Lab;
import org.standclear.platform.lab.LabScope;
import org.standclear.platform.lab.Labs;
import org.standclear.platform.security.Role;
import org.standclear.platform.time.SqlTime;
import org.standclear.trail.Trail;
import org.standclear.trail.TrailEntry;

/** Makes the first administrator and names the lab, once, for whoever can read the application's log. */
@Service
public class SetUp {

    private final JdbcClient jdbc;
    private final PeopleRegister register;
    private final Labs labs;
    private final Trail trail;
    private final Tries tries;
    private final Clock clock;
    private final boolean demo;

    SetUp(
            JdbcClient jdbc,
            PeopleRegister register,
            Labs labs,
            Trail trail,
            Tries tries,
            Clock clock,
            Environment environment) {
        this.jdbc = jdbc;
        this.register = register;
        this.labs = labs;
        this.trail = trail;
        this.tries = tries;
        this.clock = clock;
        this.demo = environment.acceptsProfiles(Profiles.of("demo"));
    }

    /** Whether the lab waits for its first administrator. */
    public boolean isNeeded() {
        return !demo
                && count("select count(*) from set_up_done") == 0
                && count("select count(*) from person_roles where role = 'ADMINISTRATOR'") == 0;
    }

    private int count(String sql) {
        return jdbc.sql(sql).query(Integer.class).single();
    }

    /** Keeps a code, by its hash; codes of other instances and earlier starts count beside it until one is used. */
    @Transactional
    public void accept(String code) {
        jdbc.sql("insert into set_up_codes (code_sha256, made_at) values (:hash, :at)")
                .param("hash", hash(code))
                .param("at", SqlTime.toSql(clock.instant()))
                .update();
    }

    /** Whether the code is one that was printed; counts the try for the client's address. */
    public Compared compare(String code, String address) {
        if (tries.begin(Kind.SET_UP, address) instanceof Begun.Paused paused) {
            return new Compared.Paused(paused.until());
        }
        int known = jdbc.sql("select count(*) from set_up_codes where code_sha256 = :hash")
                .param("hash", hash(code))
                .query(Integer.class)
                .single();
        if (known == 0) {
            return new Compared.Wrong();
        }
        tries.right(Kind.SET_UP, address);
        return new Compared.Right();
    }

    /** Does it; whoever comes second, even in the same instant, finds it done. */
    @Transactional
    public Finished finish(FirstAdministrator asked) {
        if (!isNeeded()) {
            return new Finished.TooLate();
        }
        // nobody is signed in yet, so no request says for which lab this is
        var added = LabScope.in(
                asked.lab().id(),
                () -> register.add(new NewPerson(
                        asked.login(),
                        asked.printedName(),
                        Set.of(Role.ADMINISTRATOR),
                        new Password.Chosen(asked.password()),
                        null)));
        if (added instanceof PeopleRegister.Outcome.Refused refused) {
            return new Finished.Refused(refused.field(), refused.says());
        }
        Person person = ((PeopleRegister.Outcome.Done) added).person();
        if (!close(person)) {
            return new Finished.TooLate();
        }
        labs.change(asked.lab());
        trail.append(TrailEntry.of(
                        asked.lab().id(),
                        "people.lab_set_up",
                        asked.lab().id(),
                        person.id(),
                        person.printedName() + " set up " + asked.lab().name() + ".")
                .with("zone", asked.lab().zone()));
        return new Finished.Done(person);
    }

    private boolean close(Person person) {
        try {
            jdbc.sql("insert into set_up_done (id, person_id, done_at) values (1, :person, :at)")
                    .param("person", person.id().value())
                    .param("at", SqlTime.toSql(clock.instant()))
                    .update();
            jdbc.sql("delete from set_up_codes").update();
            return true;
        } catch (DuplicateKeyException somebodyElse) {
            return false;
        }
    }

    private static String hash(String code) {
        // Locale.ROOT: what is printed has capitals and hyphens, what is typed need not
        return Sha256.of(code.toUpperCase(Locale.ROOT).replaceAll("[^0-9A-Z]", ""));
    }

    /** What the set-up form gives. */
    public record FirstAdministrator(String login, String printedName, String password, Lab lab) {}

    /** What comparing the code said. */
    public sealed interface Compared {

        /** It was printed and not used yet. */
        record Right() implements Compared {}

        /** It was not. */
        record Wrong() implements Compared {}

        /** No code is compared before that instant. */
        record Paused(Instant until) implements Compared {}
    }

    /** What came of it. */
    public sealed interface Finished {

        /** The first administrator. */
        record Done(Person person) implements Finished {}

        /** Somebody set the lab up before; the caller has to roll back. */
        record TooLate() implements Finished {}

        /** Nothing was stored; says why, and for which field. */
        record Refused(String field, String says) implements Finished {}
    }
}
