package org.standclear.people.roster;

import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import org.springframework.jdbc.core.JdbcTemplate;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.security.crypto.password.PasswordEncoder;
import org.springframework.stereotype.Component;
import org.standclear.people.roster.Differences.Enrolled;
import org.standclear.people.roster.Differences.Found;
import org.standclear.people.roster.RosterRows.Effect;
import org.standclear.platform.ids.Id;
import org.standclear.platform.lab.Labs;
import org.standclear.platform.time.SqlTime;

/** Writes what a roster changes, many rows at a time, and takes it back. */
@Component
class RosterChanges {

    private static final int BATCH = 1000;

    private final JdbcClient jdbc;
    private final Labs labs;
    private final JdbcTemplate batches;
    private final PasswordEncoder encoder;

    RosterChanges(JdbcClient jdbc, Labs labs, JdbcTemplate batches, PasswordEncoder encoder) {
        this.jdbc = jdbc;
        this.labs = labs;
        this.batches = batches;
        this.encoder = encoder;
    }

    List<Effect> apply(List<RosterRow> rows, Found found, boolean takeOut, Instant at) {
        List<Effect> effects = new ArrayList<>();
        Map<String, UUID> people = new HashMap<>();
        found.people().forEach((login, known) -> people.put(login, known.id()));
        people.putAll(add(found.added(), at, effects));
        Map<String, UUID> sections = new HashMap<>(found.sections());
        found.newSections().forEach(code -> sections.put(code, addSection(code)));
        List<Object[]> enrolments = new ArrayList<>();
        for (RosterRow row : found.enrolled()) {
            UUID person = Objects.requireNonNull(people.get(row.login()));
            UUID section = sections.get(row.sectionCode());
            enrolments.add(new Object[] {person, section, SqlTime.toSql(at)});
            effects.add(new Effect(Effect.Kind.ENROLLED, person, section, null));
        }
        batch("insert into enrolments (person_id, section_id, enrolled_at) values (?, ?, ?)", enrolments);
        letIn(enrolments);
        if (takeOut) {
            found.takenOut()
                    .values()
                    .forEach(gone -> gone.forEach(one -> {
                        takeOut(one, at);
                        effects.add(new Effect(Effect.Kind.TAKEN_OUT, one.person(), one.section(), one.since()));
                    }));
        }
        team(rows, people, sections, at, effects);
        return effects;
    }

    /** With a password that nobody knows: an administrator gives each a temporary one, or none ever signs in. */
    private Map<String, UUID> add(List<RosterRow> added, Instant at, List<Effect> effects) {
        String nobodyKnows = String.valueOf(encoder.encode(UUID.randomUUID() + " " + UUID.randomUUID()));
        UUID lab = labs.theLab().id().value();
        Map<String, UUID> ids = new HashMap<>();
        List<Object[]> accounts = new ArrayList<>();
        List<Object[]> roles = new ArrayList<>();
        for (RosterRow row : added) {
            UUID id = Id.newValue();
            ids.put(row.login(), id);
            accounts.add(new Object[] {
                id, row.login(), row.name(), row.name().toLowerCase(Locale.ROOT), nobodyKnows, SqlTime.toSql(at)
            });
            roles.add(new Object[] {id, lab, "STUDENT"});
            effects.add(new Effect(Effect.Kind.ADDED, id, null, null));
        }
        batch("""
                insert into people (id, login, printed_name, sort_name, password_hash, must_change_password, active,
                    version, created_at) values (?, ?, ?, ?, ?, true, true, 1, ?)""", accounts);
        batch("insert into person_roles (person_id, lab_id, role) values (?, ?, ?)", roles);
        return ids;
    }

    /** Who takes a course is a student of its lab, unless they work there already. */
    private void letIn(List<Object[]> enrolments) {
        UUID lab = labs.theLab().id().value();
        List<Object[]> roles = enrolments.stream()
                .map(one -> one[0])
                .distinct()
                .map(person -> new Object[] {lab, person, lab})
                .toList();
        batch("""
                insert into person_roles (person_id, lab_id, role)
                select p.id, cast(? as uuid), 'STUDENT' from people p
                where p.id = ? and not exists (
                    select 1 from person_roles r where r.person_id = p.id and r.lab_id = ?)""", roles);
    }

    private UUID addSection(String code) {
        int dash = code.lastIndexOf('-');
        UUID id = Id.newValue();
        jdbc.sql(
                        "insert into sections (id, course_id, code) select cast(:id as uuid), c.id, :code from courses c where c.code = :course and c.lab_id = :lab")
                .param("lab", labs.theLab().id().value())
                .param("id", id)
                .param("code", code.substring(dash + 1))
                .param("course", code.substring(0, dash))
                .update();
        return id;
    }

    private void takeOut(Enrolled one, Instant at) {
        jdbc.sql("delete from enrolments where person_id = :person and section_id = :section")
                .param("person", one.person())
                .param("section", one.section())
                .update();
        jdbc.sql("""
                insert into past_enrolments (person_id, section_id, enrolled_at, ended_at)
                values (:person, :section, :since, :at)""")
                .param("person", one.person())
                .param("section", one.section())
                .param("since", SqlTime.toSql(one.since()))
                .param("at", SqlTime.toSql(at))
                .update();
    }

    /** Who is in another team now leaves the old one, which keeps that in its history. */
    private void team(
            List<RosterRow> rows,
            Map<String, UUID> people,
            Map<String, UUID> sections,
            Instant at,
            List<Effect> effects) {
        for (RosterRow row : rows) {
            UUID person = people.get(row.login());
            UUID section = sections.get(row.sectionCode());
            if (row.team().isEmpty() || person == null || section == null || isIn(row.team(), person, section)) {
                continue;
            }
            jdbc.sql("""
                    update team_members set until_at = :at
                    where section_id = :section and person_id = :person and until_at is null""")
                    .param("at", SqlTime.toSql(at))
                    .param("section", section)
                    .param("person", person)
                    .update();
            jdbc.sql("""
                    insert into team_members (id, section_id, team, person_id, from_at)
                    values (:id, :section, :team, :person, :at)""")
                    .param("id", Id.newValue())
                    .param("section", section)
                    .param("team", row.team())
                    .param("person", person)
                    .param("at", SqlTime.toSql(at))
                    .update();
            effects.add(new Effect(Effect.Kind.TEAMED, person, section, at));
        }
    }

    private boolean isIn(String team, UUID person, UUID section) {
        return jdbc.sql("""
                select count(*) from team_members
                where section_id = :section and person_id = :person and team = :team and until_at is null""")
                        .param("section", section)
                        .param("person", person)
                        .param("team", team)
                        .query(Integer.class)
                        .single()
                > 0;
    }

    void takeBack(Effect effect, Instant at) {
        switch (effect.kind()) {
            case ADDED ->
                one(
                        "update people set active = false, closed_at = coalesce(closed_at, :at), version = version + 1 where id = :person",
                        effect,
                        at);
            case ENROLLED ->
                one("delete from enrolments where person_id = :person and section_id = :section", effect, at);
            case TAKEN_OUT -> enrolAgain(effect);
            case TEAMED -> {
                one(
                        "delete from team_members where person_id = :person and section_id = :section and from_at = :since",
                        effect,
                        at);
                one(
                        "update team_members set until_at = null where person_id = :person and section_id = :section and until_at = :since",
                        effect,
                        at);
            }
        }
    }

    private void enrolAgain(Effect effect) {
        Instant none = Instant.EPOCH;
        one(
                "delete from past_enrolments where person_id = :person and section_id = :section and enrolled_at = :since",
                effect,
                none);
        one("""
                insert into enrolments (person_id, section_id, enrolled_at)
                select p.id, cast(:section as uuid), cast(:since as timestamp with time zone) from people p
                where p.id = :person and not exists (
                    select 1 from enrolments e where e.person_id = p.id and e.section_id = cast(:section as uuid))""", effect, none);
    }

    private void one(String sql, Effect effect, Instant at) {
        jdbc.sql(sql)
                .param("person", effect.person())
                .param("section", effect.section())
                .param("since", SqlTime.toSql(effect.since()))
                .param("at", SqlTime.toSql(at))
                .update();
    }

    private void batch(String sql, List<Object[]> rows) {
        for (int from = 0; from < rows.size(); from += BATCH) {
            batches.batchUpdate(sql, rows.subList(from, Math.min(rows.size(), from + BATCH)));
        }
    }
}
