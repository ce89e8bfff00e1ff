package org.standclear.platform.security;

import java.util.Collection;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.springframework.security.core.CredentialsContainer;
import org.springframework.security.core.GrantedAuthority;
import org.springframework.security.core.userdetails.UserDetails;
import org.standclear.platform.ids.PersonId;

/** The person behind the session; what controllers receive with {@code @AuthenticationPrincipal}. */
public final class SignedInPerson implements UserDetails, CredentialsContainer {
    private static final long serialVersionUID = 1L;

    private final PersonId id;
    private final String login;
    private final String printedName;
    private final Set<Role> roles;
    private @Nullable String passwordHash;

    /** The account as it was when the person signed in. */
    public SignedInPerson(
            PersonId id, String login, String printedName, Set<Role> roles, @Nullable String passwordHash) {
        this.id = id;
        this.login = login;
        this.printedName = printedName;
        this.roles = roles.isEmpty() ? EnumSet.noneOf(Role.class) : EnumSet.copyOf(roles);
        this.passwordHash = passwordHash;
    }

    /** Whose session it is. */
    public PersonId id() {
        return id;
    }

    /** The name as it is printed on releases and lists. */
    public String printedName() {
        return printedName;
    }

    /** Whether the account has the role. */
    public boolean is(Role role) {
        return roles.contains(role);
    }

    /** Whether the account is a technician's or an instructor's. */
    public boolean isLabStaff() {
        return is(Role.TECHNICIAN) || is(Role.INSTRUCTOR);
    }

    /** Whether the account has any part in the lab that the request is for; without one, it may stop its cells and no more. */
    public boolean hasAPart() {
        return !roles.isEmpty();
    }

    boolean stillIs(String nowNamed, Set<Role> nowRoles) {
        return roles.equals(nowRoles) && printedName.equals(nowNamed);
    }

    SignedInPerson as(String nowNamed, Set<Role> nowRoles) {
        return new SignedInPerson(id, login, nowNamed, nowRoles, null);
    }

    @Override
    public Collection<? extends GrantedAuthority> getAuthorities() {
        return List.copyOf(roles.stream().map(Role::authority).toList());
    }

    @Override
    public @Nullable String getPassword() {
        return passwordHash;
    }

    @Override
    public String getUsername() {
        return login;
    }

    @Override
    public void eraseCredentials() {
        passwordHash = null;
    }

    @Override
    public boolean equals(@Nullable Object other) {
        return other instanceof SignedInPerson person && person.id.equals(id);
    }

    @Override
    public int hashCode() {
        return id.hashCode();
    }
}
