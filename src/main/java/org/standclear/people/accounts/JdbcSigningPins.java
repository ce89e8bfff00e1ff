package org.standclear.people.accounts;

import java.util.Optional;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.security.crypto.password.PasswordEncoder;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.standclear.people.SigningPins;
import org.standclear.people.tries.Tries;
import org.standclear.people.tries.Tries.Kind;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.security.Role;

/** Signing PINs in the accounts, hashed like passwords. */
@Service
class JdbcSigningPins implements SigningPins {

    private final JdbcClient jdbc;
    private final AccountRows rows;
    private final AccountRecord record;
    private final PasswordEncoder encoder;
    private final Tries tries;

    JdbcSigningPins(JdbcClient jdbc, AccountRows rows, AccountRecord record, PasswordEncoder encoder, Tries tries) {
        this.jdbc = jdbc;
        this.rows = rows;
        this.record = record;
        this.encoder = encoder;
        this.tries = tries;
    }

    @Override
    public Outcome check(PersonId person, String pin) {
        Optional<String> hash = hash(person);
        if (hash.isEmpty()) {
            return new Outcome.NotSet();
        }
        Tries.Begun begun = tries.begin(Kind.PIN, person.toString());
        if (begun instanceof Tries.Begun.Paused paused) {
            return new Outcome.Paused(paused.until());
        }
        if (pin.length() <= 20 && encoder.matches(pin, hash.get())) {
            tries.right(Kind.PIN, person.toString());
            return new Outcome.Right();
        }
        return new Outcome.Wrong(((Tries.Begun.Go) begun).triesLeft());
    }

    @Override
    @Transactional
    public Choice choose(PersonId id, String pin) {
        Optional<String> refused = PinRules.refuse(pin);
        if (refused.isPresent()) {
            return new Choice.Refused(refused.get());
        }
        var person = rows.lock(id).person();
        if (person.is(Role.BENCH)) {
            return new Choice.Refused("A bench screen signs nothing; people do, each with their own PIN.");
        }
        store(id, encoder.encode(pin));
        tries.right(Kind.PIN, id.toString());
        record.pinChosen(person);
        return new Choice.Chosen();
    }

    @Override
    @Transactional
    public void keepHashed(PersonId id, String hash) {
        store(id, hash);
        record.pinChosen(rows.person(id));
    }

    private void store(PersonId id, String hash) {
        jdbc.sql("update people set pin_hash = :hash where id = :id")
                .param("hash", hash)
                .param("id", id.value())
                .update();
    }

    @Override
    public boolean isSet(PersonId person) {
        return hash(person).isPresent();
    }

    private Optional<String> hash(PersonId person) {
        return jdbc.sql("select pin_hash from people where id = :id and active and pin_hash is not null")
                .param("id", person.value())
                .query(String.class)
                .optional();
    }
}
