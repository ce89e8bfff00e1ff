package org.standclear.people.accounts;

import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.standclear.people.PeopleRegister;
import org.standclear.people.Person;
import org.standclear.people.accounts.AccountRows.Stored;
import org.standclear.people.tries.Tries;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.security.OpenSessions;
import org.standclear.platform.security.Role;
import org.standclear.platform.text.PlainText;

/** Changes accounts under the row lock of the person. */
@Service
class JdbcPeopleRegister implements PeopleRegister {

    private static final int LONGEST_REASON = 400;

    private final AccountRows rows;
    private final AccountRecord record;
    private final OpenSessions sessions;
    private final Tries tries;

    JdbcPeopleRegister(AccountRows rows, AccountRecord record, OpenSessions sessions, Tries tries) {
        this.rows = rows;
        this.record = record;
        this.sessions = sessions;
        this.tries = tries;
    }

    @Override
    @Transactional
    public Outcome add(NewPerson asked) {
        Optional<Outcome.Refused> refused = NewAccount.refuse(asked);
        if (refused.isPresent()) {
            return refused.get();
        }
        String login = NewAccount.login(asked);
        String name = text(asked.printedName(), 80);
        PersonId id = PersonId.next();
        if (!rows.insert(new Person(id, login, name, asked.roles(), true), asked.password())) {
            return new Outcome.Refused("login", "Somebody has the sign-in name " + login + " already.");
        }
        record.added(rows.person(id), asked.by());
        return new Outcome.Done(rows.person(id));
    }

    @Override
    @Transactional
    public Outcome setRoles(PersonId person, Set<Role> roles, int seenVersion, PersonId by) {
        // administrators first and in order, so that two who change each other do not wait for ever
        int administrators = rows.lockedAdministrators();
        Stored stored = rows.lock(person);
        if (stored.version() != seenVersion) {
            return new Outcome.Stale(stored.person(), stored.version());
        }
        Optional<Outcome.Refused> refused =
                refuse(person, roles).or(() -> keepsAnAdministrator(stored, roles, by, administrators));
        if (refused.isPresent()) {
            return refused.get();
        }
        rows.setRoles(person, roles);
        record.rolesSet(stored.person(), new TreeSet<>(roles), by);
        return new Outcome.Done(rows.person(person));
    }

    private Optional<Outcome.Refused> refuse(PersonId person, Set<Role> roles) {
        return roles.isEmpty() && rows.isElsewhere(person) ? Optional.empty() : NewAccount.refuse(roles);
    }

    @Override
    @Transactional
    public Outcome appoint(PersonId person, Set<Role> roles, PersonId by) {
        Stored stored = rows.lock(person);
        Set<Role> all = new TreeSet<>(stored.person().roles());
        all.addAll(roles);
        Optional<Outcome.Refused> refused = NewAccount.refuse(roles).or(() -> NewAccount.refuse(all));
        if (refused.isPresent()) {
            return refused.get();
        }
        rows.setRoles(person, all);
        record.rolesSet(stored.person(), all, by);
        return new Outcome.Done(rows.person(person));
    }

    private Optional<Outcome.Refused> keepsAnAdministrator(
            Stored stored, Set<Role> roles, PersonId by, int administrators) {
        if (!stored.person().is(Role.ADMINISTRATOR) || roles.contains(Role.ADMINISTRATOR)) {
            return Optional.empty();
        }
        if (stored.person().id().equals(by)) {
            return Optional.of(new Outcome.Refused(
                    "roles", "You cannot take the administrator's role from yourself. Another administrator can."));
        }
        return lastOne(stored, administrators, "roles");
    }

    private Optional<Outcome.Refused> lastOne(Stored stored, int administrators, String field) {
        boolean last = stored.person().is(Role.ADMINISTRATOR) && stored.person().active() && administrators < 2;
        return last
                ? Optional.of(new Outcome.Refused(
                        field, "This is the last administrator. Make somebody else administrator first."))
                : Optional.empty();
    }

    @Override
    @Transactional
    public Outcome deactivate(PersonId person, String reason, PersonId by) {
        int administrators = rows.lockedAdministrators();
        Stored stored = rows.lock(person);
        if (person.equals(by)) {
            return new Outcome.Refused("reason", "You cannot close your own account. Another administrator can.");
        }
        if (PlainText.check(reason, LONGEST_REASON) instanceof PlainText.Refused refused) {
            return new Outcome.Refused("reason", refused.says());
        }
        if (stored.person().active()) {
            Optional<Outcome.Refused> last = lastOne(stored, administrators, "reason");
            if (last.isPresent()) {
                return last.get();
            }
            rows.setActive(person, false);
            sessions.endAll(stored.person().login());
            record.deactivated(stored.person(), text(reason, LONGEST_REASON), by);
        }
        return new Outcome.Done(rows.person(person));
    }

    @Override
    @Transactional
    public Outcome activate(PersonId person, String reason, PersonId by) {
        Stored stored = rows.lock(person);
        if (PlainText.check(reason, LONGEST_REASON) instanceof PlainText.Refused refused) {
            return new Outcome.Refused("reason", refused.says());
        }
        if (rows.isPseudonym(person)) {
            return new Outcome.Refused(
                    "reason",
                    "Its time is over and the name was replaced by a pseudonym. Add the person again as a new account.");
        }
        if (!stored.person().active()) {
            rows.setActive(person, true);
            record.activated(stored.person(), text(reason, LONGEST_REASON), by);
        }
        return new Outcome.Done(rows.person(person));
    }

    @Override
    @Transactional
    public Outcome setPassword(PersonId id, Password password, PersonId by) {
        Person person = rows.lock(id).person();
        Optional<Outcome.Refused> refused = NewAccount.refuse(password, person.login(), person.printedName());
        if (refused.isPresent()) {
            return refused.get();
        }
        rows.setPassword(id, password);
        tries.right(Tries.Kind.ACCOUNT, person.login());
        sessions.endAll(person.login());
        record.passwordSet(person, password, by);
        return new Outcome.Done(rows.person(id));
    }

    private static String text(String raw, int max) {
        return ((PlainText.Fine) PlainText.check(raw, max)).text();
    }
}
