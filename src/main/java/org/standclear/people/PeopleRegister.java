package org.standclear.people;

import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.security.Role;

/** Adds people and changes what their accounts may do; every act joins the running transaction and the record. */
public interface PeopleRegister {

    /** Adds a person with an account. */
    Outcome add(NewPerson person);

    /**
     * Gives the account exactly these roles in the present lab; none takes it out of the lab when it belongs to another
     * one. An administrator is one in every lab. Running sessions follow at their next request.
     *
     * @param seenVersion the account's version that the form showed
     */
    Outcome setRoles(PersonId person, Set<Role> roles, int seenVersion, PersonId by);

    /** Gives the person these roles in the present lab, beside what they have there. */
    Outcome appoint(PersonId person, Set<Role> roles, PersonId by);

    /** Closes the account and ends its sessions; the person stays in the record. */
    Outcome deactivate(PersonId person, String reason, PersonId by);

    /** Opens a closed account again. */
    Outcome activate(PersonId person, String reason, PersonId by);

    /** Gives a new password, ends the account's sessions, and lets the person try again at once. */
    Outcome setPassword(PersonId person, Password password, PersonId by);

    /**
     * Somebody who shall have an account.
     *
     * @param login 2 to 60 characters: small letters, digits and {@code . _ @ -}; capitals become small letters
     * @param by who adds; null when the application does it by itself
     */
    record NewPerson(
            String login,
            String printedName,
            Set<Role> roles,
            Password password,
            @Nullable PersonId by) {

        public NewPerson {
            roles = Set.copyOf(roles);
        }
    }

    /** A password as it comes in. */
    sealed interface Password {

        /** Chosen by the person. */
        record Chosen(String raw) implements Password {
            @Override
            public String toString() {
                return "Chosen[]";
            }
        }

        /** Given by somebody else: the person has to choose another one after signing in with it. */
        record Temporary(String raw) implements Password {
            @Override
            public String toString() {
                return "Temporary[]";
            }
        }

        /** Hashed already by the application's password encoder; the rules for passwords are not asked. */
        record Hashed(String hash) implements Password {
            @Override
            public String toString() {
                return "Hashed[]";
            }
        }
    }

    /** What came of it. */
    sealed interface Outcome {

        /** It is stored; the person as the account is now. */
        record Done(Person person) implements Outcome {}

        /** Nothing was stored; says why, and for which field: {@code login}, {@code printedName}, {@code roles}, ... */
        record Refused(String field, String says) implements Outcome {}

        /** Somebody changed the account since the form was shown; the person as stored now. */
        record Stale(Person current, int version) implements Outcome {}
    }
}
