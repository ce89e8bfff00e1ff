package org.standclear.people.tokens;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.SecureRandom;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.standclear.people.People;
import org.standclear.people.Person;
import org.standclear.people.PersonalTokens;
import org.standclear.people.signin.ClientAddress;
import org.standclear.people.tries.Tries;
import org.standclear.platform.digest.Sha256;
import org.standclear.platform.ids.Id;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.lab.Labs;
import org.standclear.platform.security.AccountStates;
import org.standclear.platform.security.SignedInPerson;
import org.standclear.platform.security.TokenHolders;
import org.standclear.platform.text.PlainText;
import org.standclear.platform.time.SqlTime;
import org.standclear.trail.Trail;
import org.standclear.trail.TrailEntry;

/** Makes tokens of 160 random bits, so that a plain SHA-256 keeps them: nothing shorter could be guessed from it. */
@Service
class JdbcPersonalTokens implements PersonalTokens, TokenHolders {

    private static final String MARK = "sctok";
    private static final String LETTERS = "abcdefghijkmnpqrstuvwxyz23456789";
    private static final int PREFIX = 10;
    private static final int SECRET = 32;
    private static final int MOST = 10;
    private static final int LONGEST_DAYS = 365;
    private static final int LONGEST_NAME = 60;

    private final TokenRows rows;
    private final People people;
    private final AccountStates accounts;
    private final Tries tries;
    private final Labs labs;
    private final Trail trail;
    private final Clock clock;
    private final SecureRandom random = new SecureRandom();

    JdbcPersonalTokens(
            TokenRows rows, People people, AccountStates accounts, Tries tries, Labs labs, Trail trail, Clock clock) {
        this.rows = rows;
        this.people = people;
        this.accounts = accounts;
        this.tries = tries;
        this.labs = labs;
        this.trail = trail;
        this.clock = clock;
    }

    @Override
    @Transactional
    public Created create(PersonId person, String name, int days) {
        PlainText.Checked checked = PlainText.check(name, LONGEST_NAME);
        if (checked instanceof PlainText.Refused refused) {
            return new Created.Refused("name", refused.says());
        }
        if (days < 1 || days > LONGEST_DAYS) {
            return new Created.Refused("days", "A token lasts 1 to " + LONGEST_DAYS + " days.");
        }
        Instant now = now();
        if (of(person).stream().filter(token -> token.countsAt(now)).count() >= MOST) {
            return new Created.Refused("name", "You have " + MOST + " tokens already. Revoke one first.");
        }
        PersonalToken token = new PersonalToken(
                Id.newValue(),
                ((PlainText.Fine) checked).text(),
                letters(PREFIX),
                now,
                now.plus(Duration.ofDays(days)),
                null,
                null);
        String secret = letters(SECRET);
        rows.add(person, token, Sha256.of(secret));
        append("people.token-created", person, token.id(), "made the personal token \"" + token.name() + "\"");
        return new Created.Kept(token, MARK + "_" + token.prefix() + "_" + secret);
    }

    private String letters(int count) {
        StringBuilder letters = new StringBuilder();
        for (int i = 0; i < count; i++) {
            letters.append(LETTERS.charAt(random.nextInt(LETTERS.length())));
        }
        return letters.toString();
    }

    @Override
    public List<PersonalToken> of(PersonId person) {
        return rows.of(person);
    }

    @Override
    @Transactional
    public boolean revoke(PersonId person, UUID token) {
        boolean revoked = rows.revoke(person, token, now());
        if (revoked) {
            append("people.token-revoked", person, token, "revoked a personal token");
        }
        return revoked;
    }

    private void append(String kind, PersonId person, UUID token, String did) {
        String name = people.printedName(person);
        trail.append(TrailEntry.of(labs.theLab().id(), kind, person, person, name + " " + did + ".")
                .with("token", token));
    }

    @Override
    public Found find(String text, String remoteAddress) {
        Optional<Found.Known> known = known(text);
        if (known.isPresent()) {
            return known.get();
        }
        Tries.Begun begun = tries.begin(Tries.Kind.TOKEN, ClientAddress.of(remoteAddress));
        return begun instanceof Tries.Begun.Paused paused ? new Found.Paused(paused.until()) : new Found.Unknown();
    }

    private Optional<Found.Known> known(String text) {
        String[] parts = text.split("_", -1);
        if (parts.length != 3 || !parts[0].equals(MARK) || parts[1].length() != PREFIX || parts[2].length() != SECRET) {
            return Optional.empty();
        }
        Instant now = now();
        return rows.byPrefix(parts[1])
                .filter(stored -> same(stored.secretSha256(), Sha256.of(parts[2])))
                .filter(stored -> stored.token().countsAt(now))
                .flatMap(stored -> holder(stored, now));
    }

    private Optional<Found.Known> holder(TokenRows.Stored stored, Instant now) {
        boolean open = accounts.of(stored.person())
                .filter(account -> !account.mustChangePassword())
                .isPresent();
        if (!open) {
            return Optional.empty();
        }
        Person person = people.find(stored.person()).orElseThrow();
        rows.used(stored.token().id(), now);
        return Optional.of(new Found.Known(
                new SignedInPerson(person.id(), person.login(), person.printedName(), person.roles(), null)));
    }

    /** Takes as long for a wrong one as for the right one. */
    private static boolean same(String one, String other) {
        return MessageDigest.isEqual(
                one.getBytes(StandardCharsets.US_ASCII), other.getBytes(StandardCharsets.US_ASCII));
    }

    private Instant now() {
        return SqlTime.stored(clock.instant());
    }
}
