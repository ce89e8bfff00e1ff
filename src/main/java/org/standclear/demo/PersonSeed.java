package org.standclear.demo;

import org.standclear.platform.security.Role;

/**
 * A person of the demo.
 *
 * @param section course and section, "RBT 110-01"; empty for people who are enrolled in none
 */
record PersonSeed(String login, String printedName, String role, String section, String note) {

    Role asRole() {
        return Role.valueOf(role);
    }

    /** Reviewer and administrator work at a desk. */
    boolean isAdministration() {
        return asRole() == Role.REVIEWER || asRole() == Role.ADMINISTRATOR;
    }

    boolean signs() {
        return asRole() != Role.BENCH;
    }
}
