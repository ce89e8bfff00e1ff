package org.standclear.routes;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Fills the ids of a lab's things into the patterns of routes. */
final class NamedThings {

    /** The table of what a path names; a variable that is missing here fails the test. */
    static final Map<String, String> TABLES = Map.ofEntries(
            Map.entry("action", "incident_actions"),
            Map.entry("answer", "check_answers"),
            Map.entry("assignment", "assignments"),
            Map.entry("authorisation", "authorisations"),
            Map.entry("booking", "bookings"),
            Map.entry("cause", "incident_causes"),
            Map.entry("cell", "cells"),
            Map.entry("closure", "booking_closures"),
            Map.entry("course", "courses"),
            Map.entry("criterion", "assignment_criteria"),
            Map.entry("feature", "cell_features"),
            Map.entry("member", "team_members"),
            Map.entry("hold", "retention_holds"),
            Map.entry("incident", "incidents"),
            Map.entry("item", "cell_equipment"),
            Map.entry("lab", "labs"),
            Map.entry("list", "retention_lists"),
            Map.entry("makeUp", "booking_make_ups"),
            Map.entry("move", "booking_bulk_moves"),
            Map.entry("offer", "booking_offers"),
            Map.entry("operator", "people"),
            Map.entry("period", "duty_periods"),
            Map.entry("person", "people"),
            Map.entry("program", "programs"),
            Map.entry("proposal", "cell_proposals"),
            Map.entry("question", "report_questions"),
            Map.entry("revision", "program_revisions"),
            Map.entry("roster", "roster_imports"),
            Map.entry("run", "runs"),
            Map.entry("shortening", "retention_proposals"),
            Map.entry("search", "booking_searches"),
            Map.entry("tag", "cell_tags"),
            Map.entry("wait", "booking_waits"),
            Map.entry("window", "booking_windows"));

    /** Names no thing of a lab: a number, a secret, a receipt, or a thing of one's own only. */
    private static final Set<String> NO_THING =
            Set.of("number", "secret", "receipt", "token", "feed", "photo", "kind", "invitation");

    private NamedThings() {}

    /** The path with ids of the lab's things in it, or with made-up ones where it has none; empty when it names nothing of the lab. */
    static Optional<String> filled(OneLab lab, String pattern) {
        Matcher variable = Pattern.compile("\\{([^}]+)}").matcher(pattern);
        StringBuilder path = new StringBuilder();
        boolean ofFirst = false;
        while (variable.find()) {
            String name = variable.group(1);
            String table = TABLES.get(name);
            if (table == null) {
                assertThat(NO_THING).as("variable of %s", pattern).contains(name);
                variable.appendReplacement(
                        path, name.equals("number") ? "1" : UUID.randomUUID().toString());
                continue;
            }
            List<UUID> ids = lab.ids(table);
            ofFirst |= !ids.isEmpty();
            variable.appendReplacement(path, (ids.isEmpty() ? UUID.randomUUID() : ids.get(0)).toString());
        }
        variable.appendTail(path);
        return ofFirst ? Optional.of(path.toString()) : Optional.empty();
    }
}
