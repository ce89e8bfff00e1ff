package org.standclear.people.duties;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.standclear.people.AuthorisationRegister;
import org.standclear.people.People;
import org.standclear.people.Person;
import org.standclear.platform.ids.Id;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.lab.Labs;
import org.standclear.platform.security.Role;
import org.standclear.platform.text.PlainText;
import org.standclear.platform.time.SqlTime;
import org.standclear.trail.Trail;
import org.standclear.trail.TrailEntry;

/** Grants and revokes under the rules of 02: never to a closed account or a bench screen, never without an end. */
@Service
class JdbcAuthorisationRegister implements AuthorisationRegister {

    private static final int LONGEST_REASON = 400;

    /** Longer ones would outlive what the person still remembers of the induction. */
    private static final Duration LONGEST = Duration.ofDays(3 * 366);

    private final JdbcClient jdbc;
    private final People people;
    private final Trail trail;
    private final Labs labs;
    private final Clock clock;

    JdbcAuthorisationRegister(JdbcClient jdbc, People people, Trail trail, Labs labs, Clock clock) {
        this.jdbc = jdbc;
        this.people = people;
        this.trail = trail;
        this.labs = labs;
        this.clock = clock;
    }

    @Override
    @Transactional
    public Outcome grant(Grant grant) {
        Person person = people.find(grant.person())
                .orElseThrow(() -> new IllegalArgumentException("no person " + grant.person()));
        Outcome.@Nullable Refused refused = refuse(grant, person);
        if (refused != null) {
            return refused;
        }
        UUID id = Id.newValue();
        insert(id, grant);
        Granted granted = find(id).orElseThrow();
        append(
                "people.authorised",
                granted,
                grant.by(),
                "was authorised as " + grant.duty().words(),
                granted.reason());
        return new Outcome.Done(granted);
    }

    private static Outcome.@Nullable Refused refuse(Grant grant, Person person) {
        if (!person.active()) {
            return new Outcome.Refused("person", "The account of " + person.printedName() + " is closed.");
        }
        if (person.is(Role.BENCH)) {
            return new Outcome.Refused("person", "A bench screen cannot be authorised; people are.");
        }
        if (!grant.validFrom().isBefore(grant.validUntil())) {
            return new Outcome.Refused("until", "It would end before it begins. Choose a later end.");
        }
        if (grant.validUntil().isAfter(grant.validFrom().plus(LONGEST))) {
            return new Outcome.Refused("until", "An authorisation lasts three years at most. Choose an earlier end.");
        }
        return PlainText.check(grant.reason(), LONGEST_REASON) instanceof PlainText.Refused refused
                ? new Outcome.Refused("reason", refused.says())
                : null;
    }

    private void insert(UUID id, Grant grant) {
        jdbc.sql("""
                insert into authorisations (id, lab_id, person_id, duty, cell_id, valid_from, valid_until, granted_by,
                    granted_at, reason)
                values (:id, :lab, :person, :duty, :cell, :from, :until, :by, :at, :reason)""")
                .param("id", id)
                .param("lab", labs.theLab().id().value())
                .param("person", grant.person().value())
                .param("duty", grant.duty().name())
                .param("cell", grant.cell() == null ? null : grant.cell().value(), java.sql.Types.OTHER)
                .param("from", SqlTime.toSql(grant.validFrom()))
                .param("until", SqlTime.toSql(grant.validUntil()))
                .param("by", grant.by().value())
                .param("at", SqlTime.toSql(clock.instant()))
                .param("reason", text(grant.reason()))
                .update();
    }

    @Override
    @Transactional
    public Outcome revoke(UUID authorisation, String reason, PersonId by) {
        if (PlainText.check(reason, LONGEST_REASON) instanceof PlainText.Refused refused) {
            return new Outcome.Refused("reason", refused.says());
        }
        Granted standing = find(authorisation)
                .orElseThrow(() -> new IllegalArgumentException("no authorisation " + authorisation));
        Instant now = clock.instant();
        if (!standing.isRevoked() && !now.isBefore(standing.authorisation().validUntil())) {
            return new Outcome.Refused("reason", "It has ended already; there is nothing to revoke.");
        }
        int changed = jdbc.sql("""
                update authorisations set revoked_by = :by, revoked_at = :at, revoke_reason = :reason
                where id = :id and revoked_by is null""")
                .param("by", by.value())
                .param("at", SqlTime.toSql(now))
                .param("reason", text(reason))
                .param("id", authorisation)
                .update();
        if (changed == 0) {
            return new Outcome.Refused("reason", "Somebody revoked it already.");
        }
        Granted revoked = find(authorisation).orElseThrow();
        append(
                "people.authorisation_revoked",
                revoked,
                by,
                "is no longer authorised as " + revoked.authorisation().duty().words(),
                text(reason));
        return new Outcome.Done(revoked);
    }

    @Override
    public Optional<Granted> find(UUID authorisation) {
        return jdbc.sql(GrantedRows.SELECT + " where id = :id")
                .param("id", authorisation)
                .query(GrantedRows::granted)
                .optional();
    }

    private void append(String kind, Granted granted, PersonId by, String did, String reason) {
        var authorisation = granted.authorisation();
        String name = people.printedName(authorisation.person());
        trail.append(TrailEntry.of(labs.theLab().id(), kind, authorisation.person(), by, name + " " + did + ".")
                .with("authorisation", granted.id())
                .with("cell", authorisation.cell() == null ? "every cell" : authorisation.cell())
                .with("from", authorisation.validFrom())
                .with("until", authorisation.validUntil())
                .with("reason", reason));
    }

    private static String text(String raw) {
        return ((PlainText.Fine) PlainText.check(raw, LONGEST_REASON)).text();
    }
}
