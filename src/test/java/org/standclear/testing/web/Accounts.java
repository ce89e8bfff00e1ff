package org.standclear.testing.web;

import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.user;

import java.util.Set;
import java.util.UUID;
import org.springframework.test.web.servlet.request.RequestPostProcessor;
import org.standclear.people.PeopleRegister;
import org.standclear.people.PeopleRegister.NewPerson;
import org.standclear.people.PeopleRegister.Outcome;
import org.standclear.people.PeopleRegister.Password;
import org.standclear.people.Person;
import org.standclear.platform.security.Role;
import org.standclear.platform.security.SignedInPerson;

/** People with accounts that no other test has, and requests of theirs. */
public final class Accounts {

    private Accounts() {}

    /** A new person with these roles. */
    public static Person add(PeopleRegister register, String printedName, Role... roles) {
        NewPerson asked = new NewPerson(
                "p" + UUID.randomUUID(), printedName, Set.of(roles), new Password.Hashed("{never}"), null);
        if (register.add(asked) instanceof Outcome.Done done) {
            return done.person();
        }
        throw new AssertionError("not added: " + printedName);
    }

    /** Makes a request one of the person, signed in. */
    public static RequestPostProcessor as(Person person) {
        return user(new SignedInPerson(person.id(), person.login(), person.printedName(), person.roles(), null));
    }
}
