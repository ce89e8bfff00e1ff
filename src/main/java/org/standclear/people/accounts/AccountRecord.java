package org.standclear.people.accounts;

import java.util.Collection;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import org.standclear.people.PeopleRegister.Password;
import org.standclear.people.Person;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.lab.Labs;
import org.standclear.platform.security.Role;
import org.standclear.trail.Trail;
import org.standclear.trail.TrailEntry;

/** What the lab's record keeps about accounts; never a password, a PIN or a hash of one. */
@Component
class AccountRecord {

    private final Trail trail;
    private final Labs labs;

    AccountRecord(Trail trail, Labs labs) {
        this.trail = trail;
        this.labs = labs;
    }

    void added(Person person, @Nullable PersonId by) {
        append("people.added", person, by, person.printedName() + " was added as " + words(person.roles()) + ".");
    }

    void rolesSet(Person before, Collection<Role> roles, PersonId by) {
        trail.append(entry(
                        "people.roles_set",
                        before,
                        by,
                        before.printedName() + " is now " + words(roles) + ", was " + words(before.roles()) + ".")
                .with("before", words(before.roles()))
                .with("after", words(roles)));
    }

    void deactivated(Person person, String reason, PersonId by) {
        trail.append(entry("people.deactivated", person, by, "The account of " + person.printedName() + " was closed.")
                .with("reason", reason));
    }

    void activated(Person person, String reason, PersonId by) {
        trail.append(
                entry("people.activated", person, by, "The account of " + person.printedName() + " was opened again.")
                        .with("reason", reason));
    }

    void passwordSet(Person person, Password password, PersonId by) {
        String how =
                password instanceof Password.Temporary ? " was given a temporary password." : " has a new password.";
        append("people.password_set", person, by, person.printedName() + how);
    }

    void pinChosen(Person person) {
        append("people.pin_chosen", person, person.id(), person.printedName() + " chose a signing PIN.");
    }

    void placed(Person screen, String where, PersonId by) {
        trail.append(entry("people.screen_placed", screen, by, screen.printedName() + " stands at " + where + " now.")
                .with("cell", where));
    }

    private void append(String kind, Person person, @Nullable PersonId by, String words) {
        trail.append(entry(kind, person, by, words));
    }

    private TrailEntry entry(String kind, Person person, @Nullable PersonId by, String words) {
        return TrailEntry.of(labs.theLab().id(), kind, person.id(), by, words).with("login", person.login());
    }

    private static String words(Collection<Role> roles) {
        return roles.isEmpty()
                ? "nothing in this lab"
                : roles.stream().sorted().map(Role::words).collect(Collectors.joining(", "));
    }
}
