package org.standclear.people.accounts;

import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import org.standclear.people.PeopleRegister.NewPerson;
import org.standclear.people.PeopleRegister.Outcome.Refused;
import org.standclear.people.PeopleRegister.Password;
import org.standclear.platform.security.Role;
import org.standclear.platform.text.PlainText;

/** Looks at an account before it is stored: the form of its name, and roles that go together. */
final class NewAccount {

    private static final int LONGEST_NAME = 80;

    private NewAccount() {}

    static String login(NewPerson person) {
        return person.login().strip().toLowerCase(Locale.ROOT);
    }

    static Optional<Refused> refuse(NewPerson person) {
        String login = login(person);
        if (!AccountForms.isLogin(login)) {
            return Optional.of(new Refused(
                    "login",
                    "Use 2 to 60 of these: letters a to z, digits, full stop, hyphen, underscore, @;"
                            + " begin with a letter or a digit."));
        }
        if (PlainText.check(person.printedName(), LONGEST_NAME) instanceof PlainText.Refused refused) {
            return Optional.of(new Refused("printedName", refused.says()));
        }
        return refuse(person.roles()).or(() -> refuse(person.password(), login, person.printedName()));
    }

    static Optional<Refused> refuse(Set<Role> roles) {
        if (roles.isEmpty()) {
            return Optional.of(new Refused("roles", "Choose one role or more."));
        }
        if (roles.contains(Role.BENCH) && roles.size() > 1) {
            return Optional.of(new Refused(
                    "roles", "A bench screen has no other role: people sign on it, it does not sign itself."));
        }
        return Optional.empty();
    }

    static Optional<Refused> refuse(Password password, String login, String printedName) {
        Optional<String> says = Optional.empty();
        if (password instanceof Password.Chosen chosen) {
            says = PasswordRules.refuse(chosen.raw(), login, printedName);
        } else if (password instanceof Password.Temporary temporary) {
            says = PasswordRules.refuse(temporary.raw(), login, printedName);
        }
        return says.map(words -> new Refused("password", words));
    }
}
