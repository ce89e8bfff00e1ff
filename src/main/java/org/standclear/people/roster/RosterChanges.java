package org.standclear.people.roster;

import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.UUID;
import org.springframework.jdbc.core.JdbcTemplate;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.security.crypto.password.PasswordEncoder;
import org.springframework.stereotype.Component;
import org.standclear.people.MailAddresses;
import org.standclear.people.roster.Differences.Enrolled;
import org.standclear.people.roster.Differences.Found;
import org.standclear.people.roster.RosterRows.Effect;
import org.standclear.platform.database.TableStatistics;
import org.standclear.platform.ids.Id;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.lab.Labs;
import org.standclear.platform.time.SqlTime;

/** Writes what a roster changes, many rows at a time. */
@Component
class RosterChanges {

    private static final int BATCH = 1000;

    private final JdbcClient jdbc;
    private final Labs labs;
    private final JdbcTemplate batches;
    private final MailAddresses addresses;
    private final PasswordEncoder encoder;
    private final TableStatistics statistics;

    RosterChanges(
            JdbcClient jdbc,
            Labs labs,
            JdbcTemplate batches,
            MailAddresses addresses,
            PasswordEncoder encoder,
            TableStatistics statistics) {
        this.jdbc = jdbc;
        this.labs = labs;
        this.batches = batches;
        this.addresses = addresses;
        this.encoder = encoder;
        this.statistics = statistics;
    }

    List<Effect> apply(Found found, boolean takeOut, Instant at) {
        List<Effect> effects = new ArrayList<>();
        Map<String, UUID> people = new HashMap<>();
        found.people().forEach((login, known) -> people.put(login, known.id()));
        Set<UUID> before = Set.copyOf(people.values());
        people.putAll(add(found.added(), at, effects));
        Map<String, UUID> sections = new HashMap<>(found.sections());
        found.newSections().forEach(code -> sections.put(code, addSection(code)));
        List<Object[]> enrolments = new ArrayList<>();
        for (RosterRow row : found.enrolled()) {
            UUID person = Objects.requireNonNull(people.get(row.login()));
            UUID section = sections.get(row.sectionCode());
            enrolments.add(new Object[] {person, section, SqlTime.toSql(at)});
            effects.add(new Effect(Effect.Kind.ENROLLED, person, section, at));
        }
        batch("insert into enrolments (person_id, section_id, enrolled_at) values (?, ?, ?)", enrolments);
        letIn(
                found.enrolled().stream()
                        .map(row -> Objects.requireNonNull(people.get(row.login())))
                        .filter(before::contains)
                        .distinct()
                        .toList(),
                at,
                effects);
        if (takeOut) {
            takeOut(found.takenOut().values().stream().flatMap(List::stream).toList(), at, effects);
        }
        team(found.teamed(), people, sections, at, effects);
        address(found.addressed(), people, effects);
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
        statistics.lookAgain(added.size() < BATCH ? List.of() : List.of("people"));
        batch("insert into person_roles (person_id, lab_id, role) values (?, ?, ?)", roles);
        return ids;
    }

    /** Who takes a course is a student of its lab, unless they work there already; who was added is one. */
    private void letIn(List<UUID> people, Instant at, List<Effect> effects) {
        UUID lab = labs.theLab().id().value();
        List<Object[]> roles = new ArrayList<>();
        for (int from = 0; from < people.size(); from += BATCH) {
            jdbc.sql("""
                    select p.id from people p where p.id in (:people) and not exists (
                        select 1 from person_roles r where r.person_id = p.id and r.lab_id = :lab)""")
                    .param("people", people.subList(from, Math.min(people.size(), from + BATCH)))
                    .param("lab", lab)
                    .query(UUID.class)
                    .list()
                    .forEach(person -> {
                        roles.add(new Object[] {person, lab, "STUDENT"});
                        effects.add(new Effect(Effect.Kind.LET_IN, person, null, at));
                    });
        }
        batch("insert into person_roles (person_id, lab_id, role) values (?, ?, ?)", roles);
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

    private void takeOut(List<Enrolled> gone, Instant at, List<Effect> effects) {
        batch(
                "delete from enrolments where person_id = ? and section_id = ?",
                gone.stream()
                        .map(one -> new Object[] {one.person(), one.section()})
                        .toList());
        batch(
                "insert into past_enrolments (person_id, section_id, enrolled_at, ended_at) values (?, ?, ?, ?)",
                gone.stream()
                        .map(one ->
                                new Object[] {one.person(), one.section(), SqlTime.toSql(one.since()), SqlTime.toSql(at)
                                })
                        .toList());
        gone.forEach(one -> effects.add(new Effect(Effect.Kind.TAKEN_OUT, one.person(), one.section(), one.since())));
    }

    /** Who is in another team now leaves the old one, which keeps that in its history. */
    private void team(
            List<RosterRow> teamed,
            Map<String, UUID> people,
            Map<String, UUID> sections,
            Instant at,
            List<Effect> effects) {
        List<Object[]> left = new ArrayList<>();
        List<Object[]> joined = new ArrayList<>();
        for (RosterRow row : teamed) {
            UUID person = Objects.requireNonNull(people.get(row.login()));
            UUID section = Objects.requireNonNull(sections.get(row.sectionCode()));
            left.add(new Object[] {SqlTime.toSql(at), section, person});
            joined.add(new Object[] {Id.newValue(), section, row.team(), person, SqlTime.toSql(at)});
            effects.add(new Effect(Effect.Kind.TEAMED, person, section, at));
        }
        batch("update team_members set until_at = ? where section_id = ? and person_id = ? and until_at is null", left);
        batch("insert into team_members (id, section_id, team, person_id, from_at) values (?, ?, ?, ?, ?)", joined);
    }

    private void address(Map<String, String> addressed, Map<String, UUID> people, List<Effect> effects) {
        Map<PersonId, String> kept = new LinkedHashMap<>();
        addressed.forEach((login, address) -> {
            UUID person = Objects.requireNonNull(people.get(login));
            kept.put(new PersonId(person), address);
            effects.add(new Effect(Effect.Kind.ADDRESSED, person, null, null));
        });
        addresses.keep(kept);
    }

    private void batch(String sql, List<Object[]> rows) {
        for (int from = 0; from < rows.size(); from += BATCH) {
            batches.batchUpdate(sql, rows.subList(from, Math.min(rows.size(), from + BATCH)));
        }
    }
}
