package org.standclear.people.roster;

import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeMap;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.standclear.people.MailAddresses;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.lab.Labs;
import org.standclear.platform.time.SqlTime;

/** Lays a roster beside what stands. */
@Component
class Differences {

    private final JdbcClient jdbc;
    private final Labs labs;
    private final MailAddresses addresses;

    Differences(JdbcClient jdbc, Labs labs, MailAddresses addresses) {
        this.jdbc = jdbc;
        this.labs = labs;
        this.addresses = addresses;
    }

    /**
     * Somebody with an account.
     *
     * @param here whether the person has a part in this lab; of others nothing is shown but what the file says
     * @param staff whether the person is more than a student, here or in another lab
     */
    record Known(UUID id, String login, String name, boolean active, boolean here, boolean staff) {}

    /** That somebody is in a section now. */
    record Enrolled(UUID person, String name, UUID section, String course, String code, Instant since) {}

    /**
     * What is different.
     *
     * @param added rows of people without an account, one each
     * @param enrolled rows whose enrolment is new
     * @param takenOut enrolments of the file's courses that it does not name, by section's code
     * @param sections the ids of sections that exist, by code
     * @param newSections codes of sections that do not
     * @param unknownCourses codes of courses that do not exist
     * @param teamed rows whose pair or team is another one now, or none
     * @param addressed addresses for messages by sign-in name, of people who have none
     */
    record Found(
            List<RosterRow> added,
            List<RosterRow> enrolled,
            Map<String, List<Enrolled>> takenOut,
            Map<String, UUID> sections,
            Set<String> newSections,
            Set<String> unknownCourses,
            Set<String> namedSections,
            Map<String, Known> people,
            List<RosterRow> teamed,
            Map<String, String> addressed,
            List<String> notes) {

        /** Names of people who have an account already and get the file's address, in the file's order. */
        List<String> addressedBefore() {
            return addressed.keySet().stream()
                    .map(people::get)
                    .filter(Objects::nonNull)
                    .map(Known::name)
                    .toList();
        }

        /** Everything that applying would change, one thing a line, so that a preview can be told from another. */
        String statement() {
            StringBuilder lines = new StringBuilder();
            added.forEach(row -> line(lines, "account", row.login(), row.name()));
            newSections.forEach(code -> line(lines, "section", code, ""));
            enrolled.forEach(row -> line(lines, "enrolment", row.login(), row.sectionCode()));
            takenOut.forEach((code, gone) ->
                    gone.forEach(one -> line(lines, "taken out", one.person() + " " + one.since(), code)));
            teamed.forEach(row -> line(lines, "team", row.login() + " " + row.sectionCode(), row.team()));
            addressed.forEach((login, address) -> line(lines, "address", login, address));
            notes.forEach(note -> line(lines, "note", note, ""));
            return lines.toString();
        }

        private static void line(StringBuilder lines, String what, String who, String to) {
            lines.append(what).append('\t').append(who).append('\t').append(to).append('\n');
        }
    }

    Found of(List<RosterRow> rows) {
        Map<String, Known> people = new HashMap<>();
        jdbc.sql("""
                select p.id, p.login, p.printed_name, p.active, exists (select 1 from person_roles r
                    where r.person_id = p.id and (r.lab_id = :lab or r.role = 'ADMINISTRATOR')) as here,
                    exists (select 1 from person_roles r
                        where r.person_id = p.id and r.role <> 'STUDENT') as staff
                from people p""")
                .param("lab", labs.theLab().id().value())
                .query((row, number) -> new Known(
                        row.getObject("id", UUID.class),
                        row.getString("login"),
                        row.getString("printed_name"),
                        row.getBoolean("active"),
                        row.getBoolean("here"),
                        row.getBoolean("staff")))
                .list()
                .forEach(one -> people.put(one.login(), one));
        Map<String, UUID> courses = new HashMap<>();
        jdbc.sql("select id, code from courses where lab_id = :lab")
                .param("lab", labs.theLab().id().value())
                .query((row, number) -> Map.entry(row.getString("code"), row.getObject("id", UUID.class)))
                .list()
                .forEach(one -> courses.put(one.getKey(), one.getValue()));
        Map<String, UUID> sections = new HashMap<>();
        jdbc.sql(
                        "select s.id, c.code as course, s.code from sections s join courses c on c.id = s.course_id where c.lab_id = :lab")
                .param("lab", labs.theLab().id().value())
                .query((row, number) -> Map.entry(
                        row.getString("course") + "-" + row.getString("code"), row.getObject("id", UUID.class)))
                .list()
                .forEach(one -> sections.put(one.getKey(), one.getValue()));
        return lay(rows, people, courses, sections, enrolments());
    }

    /** Who is in which team now: person, section and team. */
    private Set<String> teams() {
        return new HashSet<>(jdbc.sql("select person_id, section_id, team from team_members where until_at is null")
                .query((row, number) -> row.getObject("person_id", UUID.class) + " "
                        + row.getObject("section_id", UUID.class) + " " + row.getString("team"))
                .list());
    }

    private List<RosterRow> teamed(List<RosterRow> rows, Map<String, Known> people, Map<String, UUID> sections) {
        Set<String> teams = rows.stream().allMatch(row -> row.team().isEmpty()) ? Set.of() : teams();
        return rows.stream()
                .filter(row -> !row.team().isEmpty())
                .filter(row -> {
                    Known known = people.get(row.login());
                    UUID section = sections.get(row.sectionCode());
                    return known == null
                            || section == null
                            || !teams.contains(known.id() + " " + section + " " + row.team());
                })
                .toList();
    }

    private Map<String, String> addressed(List<RosterRow> rows, Map<String, Known> people, List<String> notes) {
        Map<String, String> found = new LinkedHashMap<>();
        if (rows.stream().allMatch(row -> row.address().isEmpty())) {
            return found;
        }
        Set<PersonId> have = addresses.known();
        for (RosterRow row : rows) {
            Known known = people.get(row.login());
            if (row.address().isEmpty() || (known != null && keepsAddress(known, have))) {
                continue;
            }
            if (known != null && known.staff()) {
                notes.add("Line " + row.line() + ": the e-mail address of " + known.name()
                        + " is left out: who is more than a student enters it under their own account.");
            } else if (addresses.usable(row.address())) {
                found.putIfAbsent(row.login(), row.address());
            } else {
                notes.add("Line " + row.line() + ": the e-mail address of " + row.name()
                        + " cannot be written to and is left out.");
            }
        }
        return found;
    }

    /**
     * Where somebody's messages go is not for the roster of a lab to say that they have no part in yet; nor, in any lab,
     * that of staff, who hear of incidents and approvals.
     */
    private static boolean keepsAddress(Known known, Set<PersonId> have) {
        return !known.here() || have.contains(new PersonId(known.id()));
    }

    private List<Enrolled> enrolments() {
        return jdbc.sql("""
                select e.person_id, p.printed_name, e.section_id, c.code as course, s.code, e.enrolled_at
                from enrolments e join people p on p.id = e.person_id join sections s on s.id = e.section_id
                join courses c on c.id = s.course_id
                where c.lab_id = :lab order by p.sort_name""")
                .param("lab", labs.theLab().id().value())
                .query((row, number) -> new Enrolled(
                        row.getObject("person_id", UUID.class),
                        row.getString("printed_name"),
                        row.getObject("section_id", UUID.class),
                        row.getString("course"),
                        row.getString("course") + "-" + row.getString("code"),
                        SqlTime.read(row, "enrolled_at")))
                .list();
    }

    private Found lay(
            List<RosterRow> rows,
            Map<String, Known> people,
            Map<String, UUID> courses,
            Map<String, UUID> sections,
            List<Enrolled> enrolments) {
        Set<String> standing = new HashSet<>();
        enrolments.forEach(one -> standing.add(one.person() + " " + one.code()));
        Map<String, RosterRow> added = new LinkedHashMap<>();
        List<RosterRow> enrolled = new ArrayList<>();
        Set<String> unknown = new LinkedHashSet<>();
        Set<String> newSections = new LinkedHashSet<>();
        Set<String> named = new HashSet<>();
        Set<String> kept = new HashSet<>();
        List<String> notes = new ArrayList<>();
        for (RosterRow row : rows) {
            Known known = people.get(row.login());
            named.add(row.sectionCode());
            if (!courses.containsKey(row.course())) {
                unknown.add(row.course());
            } else if (!sections.containsKey(row.sectionCode())) {
                newSections.add(row.sectionCode());
            }
            if (known == null) {
                added.putIfAbsent(row.login(), row);
                enrolled.add(row);
                continue;
            }
            note(row, known, notes);
            kept.add(known.id() + " " + row.sectionCode());
            if (!standing.contains(known.id() + " " + row.sectionCode())) {
                enrolled.add(row);
            }
        }
        return new Found(
                List.copyOf(added.values()),
                enrolled,
                takenOut(rows, enrolments, kept),
                sections,
                newSections,
                unknown,
                named,
                people,
                teamed(rows, people, sections),
                addressed(rows, people, notes),
                notes);
    }

    /** Enrolments of the file's courses that it does not name, by section. */
    private static Map<String, List<Enrolled>> takenOut(
            List<RosterRow> rows, List<Enrolled> enrolments, Set<String> kept) {
        Set<String> courseCodes = new HashSet<>();
        rows.forEach(row -> courseCodes.add(row.course()));
        Map<String, List<Enrolled>> takenOut = new TreeMap<>();
        enrolments.stream()
                .filter(one -> courseCodes.contains(one.course()))
                .filter(one -> !kept.contains(one.person() + " " + one.code()))
                .forEach(one -> takenOut.computeIfAbsent(one.code(), code -> new ArrayList<>())
                        .add(one));
        return takenOut;
    }

    private static void note(RosterRow row, Known known, List<String> notes) {
        if (!known.here()) {
            notes.add(row.login() + ", " + row.name()
                    + " in the file, has an account of another lab. It is used as it is.");
            return;
        }
        if (!known.name().equals(row.name())) {
            notes.add(row.login() + " is " + known.name() + " here and " + row.name()
                    + " in the file; the name here stays.");
        }
        if (!known.active()) {
            notes.add(known.name() + "'s account is closed and stays closed.");
        }
    }
}
