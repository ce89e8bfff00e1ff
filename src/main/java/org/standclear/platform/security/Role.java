package org.standclear.platform.security;

import org.springframework.security.core.GrantedAuthority;
import org.springframework.security.core.authority.SimpleGrantedAuthority;

/** What an account is for; a person may have several. Who may attend or operate is an authorisation, not a role. */
public enum Role {
    STUDENT("student"),
    TECHNICIAN("technician"),
    INSTRUCTOR("instructor"),
    REVIEWER("safety reviewer"),
    ADMINISTRATOR("administrator"),
    /** The account of a shared screen at a cell: shows the bench page, signs nothing itself. */
    BENCH("bench screen");

    private final String words;

    Role(String words) {
        this.words = words;
    }

    /** The role as people say it. */
    public String words() {
        return words;
    }

    /** The role as Spring Security checks it. */
    public GrantedAuthority authority() {
        return new SimpleGrantedAuthority("ROLE_" + name());
    }
}
