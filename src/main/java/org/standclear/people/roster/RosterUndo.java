package org.standclear.people.roster;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import org.springframework.jdbc.core.JdbcTemplate;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.standclear.people.MailAddresses;
import org.standclear.people.roster.SectionMoves.Place;
import org.standclear.platform.ids.Id;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.security.OpenSessions;
import org.standclear.platform.time.SqlTime;

/**
 * Takes a roster back, one statement a kind whatever its length. What somebody changed since stays: an account that is more
 * than a student's now, an enrolment or a team that was made anew.
 */
@Component
class RosterUndo {

    private static final String OF = """
            exists (select 1 from roster_effects f where f.import_id = :id and f.kind = '%1$s'
                and f.person_id = %2$s.person_id and f.section_id = %2$s.section_id%3$s)""";

    private static final String LAB = "(select i.lab_id from roster_imports i where i.id = :id)";

    /** Accounts that the roster added and that are nothing but a student's of its lab, without a section. */
    private static final String TO_CLOSE = """
            id in (select f.person_id from roster_effects f where f.import_id = :id and f.kind = 'ADDED')
            and id not in (:still)
            and not exists (select 1 from person_roles r where r.person_id = people.id
                and (r.role <> 'STUDENT' or r.lab_id <> %s))
            and not exists (select 1 from enrolments e where e.person_id = people.id)""".formatted(LAB);

    private final JdbcClient jdbc;
    private final JdbcTemplate batches;
    private final MailAddresses addresses;
    private final OpenSessions sessions;

    RosterUndo(JdbcClient jdbc, JdbcTemplate batches, MailAddresses addresses, OpenSessions sessions) {
        this.jdbc = jdbc;
        this.batches = batches;
        this.addresses = addresses;
        this.sessions = sessions;
    }

    /** What was taken back: which accounts were closed, and which places in sections came back or ended. */
    record TakenBack(List<UUID> closed, List<Place> reopened, List<Place> ended) {}

    /**
     * Takes everything back that nobody has built on.
     *
     * @param studentsStill whom the roster let into the lab and who stay its students, with an account that stays open
     */
    TakenBack takeBack(UUID roster, Collection<UUID> studentsStill, Instant at) {
        change(
                "delete from team_members where "
                        + OF.formatted("TEAMED", "team_members", " and f.since = team_members.from_at"),
                roster);
        change(
                "update team_members set until_at = null where "
                        + OF.formatted("TEAMED", "team_members", " and f.since = team_members.until_at") + """
                 and not exists (select 1 from team_members t where t.person_id = team_members.person_id
                    and t.section_id = team_members.section_id and t.until_at is null)""",
                roster);
        List<Place> reopened = reopen(roster);
        List<Place> ended = end(roster);
        addresses.forget(addresses(roster));
        List<UUID> still = new ArrayList<>(studentsStill);
        // SQL knows no empty list
        still.add(Id.newValue());
        endSessions(roster, still);
        List<UUID> closed = jdbc.sql("select id from people where active and " + TO_CLOSE)
                .param("id", roster)
                .param("still", still)
                .query(UUID.class)
                .list();
        jdbc.sql("""
                update people set active = false, closed_at = coalesce(closed_at, :at), version = version + 1
                where active and """ + " " + TO_CLOSE)
                .param("id", roster)
                .param("still", still)
                .param("at", SqlTime.toSql(at))
                .update();
        seeOut(roster, still);
        return new TakenBack(closed, reopened, ended);
    }

    /** Who was taken out is in again, unless somebody put them back since: then what they had before stays past. */
    private List<Place> reopen(UUID roster) {
        List<Place> reopened = new ArrayList<>();
        List<Object[]> rows = new ArrayList<>();
        jdbc.sql("""
                select f.person_id, f.section_id, f.since, c.code as course, s.code as section from roster_effects f
                join sections s on s.id = f.section_id join courses c on c.id = s.course_id
                where f.import_id = :id and f.kind = 'TAKEN_OUT' and not exists (
                    select 1 from enrolments e where e.person_id = f.person_id and e.section_id = f.section_id)
                order by f.number""").param("id", roster).query(row -> {
            Place place = SectionMoves.place(row, 0);
            reopened.add(place);
            rows.add(new Object[] {place.person(), place.section(), SqlTime.toSql(SqlTime.read(row, "since"))});
        });
        if (!rows.isEmpty()) {
            batches.batchUpdate(
                    "delete from past_enrolments where person_id = ? and section_id = ? and enrolled_at = ?", rows);
            batches.batchUpdate("insert into enrolments (person_id, section_id, enrolled_at) values (?, ?, ?)", rows);
        }
        return reopened;
    }

    /** What it enrolled ends; rosters applied before the time was kept have none. */
    private List<Place> end(UUID roster) {
        String mine =
                OF.formatted("ENROLLED", "enrolments", " and (f.since is null or f.since = enrolments.enrolled_at)");
        List<Place> ended = jdbc.sql("""
                select enrolments.person_id, enrolments.section_id, c.code as course, s.code as section from enrolments
                join sections s on s.id = enrolments.section_id join courses c on c.id = s.course_id
                where """ + " " + mine)
                .param("id", roster)
                .query(SectionMoves::place)
                .list();
        change("delete from enrolments where " + mine, roster);
        return ended;
    }

    /**
     * Who is a student of the lab by the roster alone is none any more: those with an account of another lab, and those whom
     * another lab let in since. A closed account keeps what it was.
     */
    private void seeOut(UUID roster, List<UUID> still) {
        jdbc.sql("""
                delete from person_roles where role = 'STUDENT' and lab_id = %1$s and person_id not in (:still)
                and exists (select 1 from roster_effects f join people p on p.id = f.person_id
                    where f.import_id = :id and f.person_id = person_roles.person_id
                    and (f.kind = 'LET_IN' or f.kind = 'ADDED' and p.active))
                and not exists (select 1 from person_roles o where o.person_id = person_roles.person_id
                    and o.lab_id = person_roles.lab_id and o.role <> 'STUDENT')
                and not exists (select 1 from enrolments e join sections s on s.id = e.section_id
                    join courses c on c.id = s.course_id
                    where e.person_id = person_roles.person_id and c.lab_id = %1$s)""".formatted(LAB)).param("id", roster).param("still", still).update();
    }

    /** Whom the roster made students of this lab, with a new account or with one of another lab, by name. */
    Map<UUID, String> letIn(UUID roster) {
        Map<UUID, String> names = new LinkedHashMap<>();
        jdbc.sql("""
                select p.id, p.printed_name from people p where p.id in (
                    select f.person_id from roster_effects f where f.import_id = :id and f.kind in ('LET_IN', 'ADDED')) and p.active
                order by p.sort_name, p.id""").param("id", roster).query(row -> {
            names.put(row.getObject("id", UUID.class), row.getString("printed_name"));
        });
        return names;
    }

    /**
     * Names of accounts that it added and that stay open when it is taken back, because they are more than that now. What it
     * enrolled is read apart: asked for each enrolment, PostgreSQL looked through all of it for each.
     */
    List<String> staying(UUID roster) {
        Map<In, Instant> enrolled = new HashMap<>();
        jdbc.sql("""
                select person_id, section_id, since from roster_effects
                where import_id = :id and kind = 'ENROLLED'""").param("id", roster).query(row -> {
            // rosters applied before the time was kept have none
            Instant since = SqlTime.readNullable(row, "since");
            enrolled.put(place(row), since == null ? Instant.MIN : since);
        });
        Map<UUID, String> names = new LinkedHashMap<>();
        jdbc.sql("""
                select p.id as person_id, p.printed_name, e.section_id, e.enrolled_at,
                    exists (select 1 from person_roles r where r.person_id = p.id
                        and (r.role <> 'STUDENT' or r.lab_id <> %s)) as is_more
                from roster_effects f join people p on p.id = f.person_id
                left join enrolments e on e.person_id = p.id
                where f.import_id = :id and f.kind = 'ADDED' and p.active
                order by p.sort_name, p.id""".formatted(LAB)).param("id", roster).query(row -> {
            if (row.getBoolean("is_more") || isOtherwiseEnrolled(row, enrolled)) {
                names.put(row.getObject("person_id", UUID.class), row.getString("printed_name"));
            }
        });
        return List.copyOf(names.values());
    }

    /** Somebody in a section. */
    private record In(UUID person, UUID section) {}

    private static In place(ResultSet row) throws SQLException {
        return new In(row.getObject("person_id", UUID.class), row.getObject("section_id", UUID.class));
    }

    private static boolean isOtherwiseEnrolled(ResultSet row, Map<In, Instant> enrolled) throws SQLException {
        if (row.getObject("section_id", UUID.class) == null) {
            return false;
        }
        Instant by = enrolled.get(place(row));
        return by == null || !by.equals(Instant.MIN) && !by.equals(SqlTime.read(row, "enrolled_at"));
    }

    /** Read apart and put together here: joined by sign-in name, H2 looked through all rows for each of them. */
    private Map<PersonId, String> addresses(UUID roster) {
        Map<String, String> byLogin = new HashMap<>();
        jdbc.sql("select login, address from roster_rows where import_id = :id and address <> '' order by line")
                .param("id", roster)
                .query(row -> {
                    byLogin.putIfAbsent(row.getString("login"), row.getString("address"));
                });
        Map<PersonId, String> kept = new HashMap<>();
        jdbc.sql("""
                select p.id, p.login from roster_effects f join people p on p.id = f.person_id
                where f.import_id = :id and f.kind = 'ADDRESSED'""").param("id", roster).query(row -> {
            String address = byLogin.get(row.getString("login"));
            if (address != null) {
                kept.put(new PersonId(row.getObject("id", UUID.class)), address);
            }
        });
        return kept;
    }

    /** Whoever is signed in with an account that is about to be closed is not any more. */
    private void endSessions(UUID roster, List<UUID> still) {
        Set<String> open = Set.copyOf(sessions.logins());
        jdbc
                .sql("select login from people where active and " + TO_CLOSE)
                .param("id", roster)
                .param("still", still)
                .query(String.class)
                .list()
                .stream()
                .filter(open::contains)
                .forEach(sessions::endAll);
    }

    private void change(String sql, UUID roster) {
        jdbc.sql(sql).param("id", roster).update();
    }
}
