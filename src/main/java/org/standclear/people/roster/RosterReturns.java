package org.standclear.people.roster;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Types;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.JdbcTemplate;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.standclear.people.RosterImports.Return;
import org.standclear.people.RosterImports.Return.Kind;
import org.standclear.people.StandingBookings;
import org.standclear.people.roster.RosterUndo.TakenBack;
import org.standclear.people.roster.SectionMoves.Place;
import org.standclear.platform.ids.PersonId;

/** What taking rosters back really changed: kept as it was then, since whoever reads it later asks who was told. */
@Component
class RosterReturns {

    private static final int TOGETHER = 1000;

    private final JdbcClient jdbc;
    private final JdbcTemplate batches;
    private final StandingBookings standing;

    RosterReturns(JdbcClient jdbc, JdbcTemplate batches, StandingBookings standing) {
        this.jdbc = jdbc;
        this.batches = batches;
        this.standing = standing;
    }

    private record Row(Kind kind, UUID person, @Nullable UUID section, String code) {

        static Row of(Kind kind, Place place) {
            return new Row(kind, place.person(), place.section(), place.code());
        }
    }

    /** Keeps it, by kind, section and name. */
    void keep(UUID roster, TakenBack back) {
        List<Row> rows = new ArrayList<>();
        back.reopened().forEach(place -> rows.add(Row.of(Kind.BACK, place)));
        back.ended().forEach(place -> rows.add(Row.of(Kind.ENDED, place)));
        Set<UUID> moved = new LinkedHashSet<>();
        rows.forEach(row -> moved.add(row.person()));
        back.closed().forEach(person -> rows.add(new Row(Kind.CLOSED, person, null, "")));
        Map<UUID, String> names = sortNames(rows);
        rows.sort(Comparator.comparing(Row::kind)
                .thenComparing(Row::code)
                .thenComparing(row -> names.getOrDefault(row.person(), ""))
                .thenComparing(Row::person));
        Map<PersonId, Integer> told =
                standing.aheadOfEach(moved.stream().map(PersonId::new).toList());
        insert(roster, rows, told);
    }

    private void insert(UUID roster, List<Row> rows, Map<PersonId, Integer> told) {
        List<Object[]> values = new ArrayList<>();
        for (Row row : rows) {
            values.add(new Object[] {
                roster,
                values.size() + 1,
                row.kind().name(),
                row.person(),
                row.section(),
                row.kind() == Kind.CLOSED ? 0 : told.getOrDefault(new PersonId(row.person()), 0)
            });
        }
        batches.batchUpdate(
                "insert into roster_returns (import_id, number, kind, person_id, section_id, told_bookings) "
                        + "values (?, ?, ?, ?, ?, ?)",
                values,
                new int[] {Types.OTHER, Types.INTEGER, Types.VARCHAR, Types.OTHER, Types.OTHER, Types.INTEGER});
    }

    private Map<UUID, String> sortNames(Collection<Row> rows) {
        List<UUID> people = rows.stream().map(Row::person).distinct().toList();
        Map<UUID, String> names = new HashMap<>();
        for (int from = 0; from < people.size(); from += TOGETHER) {
            jdbc.sql("select id, sort_name from people where id in (:people)")
                    .param("people", people.subList(from, Math.min(people.size(), from + TOGETHER)))
                    .query(row -> {
                        names.put(row.getObject("id", UUID.class), row.getString("sort_name"));
                    });
        }
        return names;
    }

    /** The next lines after that number. */
    List<Return> after(UUID roster, int number, int atMost) {
        return jdbc.sql("""
                select r.number, r.kind, p.printed_name, c.code as course, s.code as section, r.told_bookings
                from roster_returns r join people p on p.id = r.person_id
                left join sections s on s.id = r.section_id left join courses c on c.id = s.course_id
                where r.import_id = :id and r.number > :number order by r.number fetch first :most rows only""")
                .param("id", roster)
                .param("number", number)
                .param("most", atMost)
                .query(RosterReturns::line)
                .list();
    }

    private static Return line(ResultSet row, int number) throws SQLException {
        Kind kind = Kind.valueOf(row.getString("kind"));
        return new Return(
                row.getInt("number"),
                kind,
                row.getString("printed_name"),
                kind == Kind.CLOSED ? "" : row.getString("course") + "-" + row.getString("section"),
                row.getInt("told_bookings"));
    }

    /** A sentence for each kind of change that there was, and one for who was told. */
    List<String> says(UUID roster) {
        Map<Kind, Integer> counts = new EnumMap<>(Kind.class);
        jdbc.sql("select kind, count(*) as n from roster_returns where import_id = :id group by kind")
                .param("id", roster)
                .query(row -> {
                    counts.put(Kind.valueOf(row.getString("kind")), row.getInt("n"));
                });
        List<String> says = new ArrayList<>();
        counts.forEach((kind, count) -> says.add(says(kind, count)));
        told(roster, says);
        return says;
    }

    private static String says(Kind kind, int count) {
        boolean one = count == 1;
        return count + " "
                + switch (kind) {
                    case BACK -> one ? "place in a section came back." : "places in sections came back.";
                    case ENDED -> one ? "enrolment ended." : "enrolments ended.";
                    case CLOSED -> one ? "account was closed." : "accounts were closed.";
                };
    }

    private void told(UUID roster, List<String> says) {
        List<Integer> each =
                jdbc.sql("""
                        select max(told_bookings) as n from roster_returns
                        where import_id = :id and told_bookings > 0 group by person_id""").param("id", roster).query(Integer.class).list();
        int bookings = each.stream().mapToInt(Integer::intValue).sum();
        if (bookings > 0) {
            says.add((each.size() == 1 ? "1 person" : each.size() + " people") + " with "
                    + (bookings == 1 ? "1 booking" : bookings + " bookings")
                    + " ahead " + (each.size() == 1 ? "was" : "were") + " told: the bookings stay.");
        }
    }
}
