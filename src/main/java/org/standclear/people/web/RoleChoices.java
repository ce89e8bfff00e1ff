package org.standclear.people.web;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.standclear.platform.security.Role;

/** Roles as forms offer and send them. */
final class RoleChoices {

    private RoleChoices() {}

    /** Value and words of every role. */
    static Map<String, String> all() {
        Map<String, String> choices = new LinkedHashMap<>();
        for (Role role : Role.values()) {
            choices.put(role.name(), role.words());
        }
        return choices;
    }

    /** The roles a form sent; names that are no role are left out. */
    static Set<Role> read(@Nullable List<String> names) {
        return names == null
                ? Set.of()
                : names.stream().flatMap(name -> read(name).stream()).collect(Collectors.toUnmodifiableSet());
    }

    static Optional<Role> read(String name) {
        for (Role role : Role.values()) {
            if (role.name().equals(name)) {
                return Optional.of(role);
            }
        }
        return Optional.empty();
    }

    /** "instructor, safety reviewer". */
    static String words(Set<Role> roles) {
        return roles.stream().sorted().map(Role::words).collect(Collectors.joining(", "));
    }

    static List<String> names(Set<Role> roles) {
        return roles.stream().map(Role::name).toList();
    }
}
