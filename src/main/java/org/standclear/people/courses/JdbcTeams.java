package org.standclear.people.courses;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.standclear.people.People;
import org.standclear.people.Teams;
import org.standclear.platform.ids.CourseId;
import org.standclear.platform.ids.Id;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.ids.SectionId;
import org.standclear.platform.lab.Labs;
import org.standclear.platform.text.PlainText;
import org.standclear.platform.time.SqlTime;
import org.standclear.trail.Trail;
import org.standclear.trail.TrailEntry;

/** Teams as the table has them; rosters write the same rows. */
@Service
@Transactional
class JdbcTeams implements Teams {

    private static final int LONGEST = 40;
    private static final String READ = """
            select m.*, s.course_id, c.code as course, s.code as section from team_members m
            join sections s on s.id = m.section_id join courses c on c.id = s.course_id
            join people p on p.id = m.person_id\s""";

    private final JdbcClient jdbc;
    private final CourseList sections;
    private final People people;
    private final Trail trail;
    private final Labs labs;
    private final Clock clock;

    JdbcTeams(JdbcClient jdbc, CourseList sections, People people, Trail trail, Labs labs, Clock clock) {
        this.jdbc = jdbc;
        this.sections = sections;
        this.people = people;
        this.trail = trail;
        this.labs = labs;
        this.clock = clock;
    }

    @Override
    @Transactional(readOnly = true)
    public List<Member> of(CourseId course) {
        return jdbc.sql(
                        READ
                                + "where s.course_id = :course and m.until_at is null order by s.code, m.team, p.sort_name, m.id")
                .param("course", course.value())
                .query((row, number) -> member(row))
                .list();
    }

    @Override
    @Transactional(readOnly = true)
    public Map<SectionId, String> sections(CourseId course) {
        Map<SectionId, String> codes = new LinkedHashMap<>();
        sections.sections(course).forEach(section -> codes.put(section.id(), section.code()));
        return codes;
    }

    @Override
    @Transactional(readOnly = true)
    public List<Member> past(CourseId course, int atMost) {
        return jdbc.sql(READ + "where s.course_id = :course and m.until_at is not null "
                        + "order by m.until_at desc, m.id fetch first :most rows only")
                .param("course", course.value())
                .param("most", atMost)
                .query((row, number) -> member(row))
                .list();
    }

    @Override
    @Transactional(readOnly = true)
    public List<Member> ofPerson(PersonId person) {
        return jdbc.sql(READ + "where m.person_id = :person "
                        + "order by case when m.until_at is null then 0 else 1 end, m.from_at desc, m.id")
                .param("person", person.value())
                .query((row, number) -> member(row))
                .list();
    }

    @Override
    @Transactional(readOnly = true)
    public Set<PersonId> partnersOf(PersonId person) {
        return Set.copyOf(jdbc.sql("""
                select distinct o.person_id from team_members m
                join team_members o on o.section_id = m.section_id and o.team = m.team and o.person_id <> m.person_id
                where m.person_id = :person and m.until_at is null and o.until_at is null""")
                .param("person", person.value())
                .query((row, number) -> new PersonId(row.getObject("person_id", UUID.class)))
                .list());
    }

    @Override
    public Optional<Wrong> put(SectionId section, String team, List<PersonId> members, PersonId by) {
        if (PlainText.check(team, LONGEST) instanceof PlainText.Refused refused) {
            return Optional.of(new Wrong("team", refused.says()));
        }
        String kept = ((PlainText.Fine) PlainText.check(team, LONGEST)).text();
        jdbc.sql("select id from sections where id = :id for update")
                .param("id", section.value())
                .query(UUID.class)
                .single();
        for (PersonId person : members) {
            if (!isEnrolled(person, section)) {
                return Optional.of(new Wrong("logins", people.printedName(person) + " is not in that section."));
            }
        }
        members.forEach(person -> put(section, kept, person));
        trail.append(TrailEntry.of(
                labs.theLab().id(),
                "people.team-changed",
                section,
                by,
                "Team " + kept + ": "
                        + members.stream().map(people::printedName).collect(Collectors.joining(", ")) + " joined"));
        return Optional.empty();
    }

    private boolean isEnrolled(PersonId person, SectionId section) {
        return jdbc.sql("select count(*) from enrolments where person_id = :person and section_id = :section")
                        .param("person", person.value())
                        .param("section", section.value())
                        .query(Integer.class)
                        .single()
                > 0;
    }

    private void put(SectionId section, String team, PersonId person) {
        Object now = SqlTime.toSql(clock.instant());
        jdbc.sql("""
                update team_members set until_at = :now
                where section_id = :section and person_id = :person and until_at is null""")
                .param("now", now)
                .param("section", section.value())
                .param("person", person.value())
                .update();
        jdbc.sql("""
                insert into team_members (id, section_id, team, person_id, from_at)
                values (:id, :section, :team, :person, :now)""")
                .param("id", Id.newValue())
                .param("section", section.value())
                .param("team", team)
                .param("person", person.value())
                .param("now", now)
                .update();
    }

    @Override
    public boolean takeOut(UUID id, PersonId by) {
        Optional<Member> member = jdbc.sql(READ + "where m.id = :id and m.until_at is null")
                .param("id", id)
                .query((row, number) -> member(row))
                .optional();
        member.ifPresent(one -> {
            jdbc.sql("update team_members set until_at = :now where id = :id and until_at is null")
                    .param("now", SqlTime.toSql(clock.instant()))
                    .param("id", id)
                    .update();
            trail.append(TrailEntry.of(
                    labs.theLab().id(),
                    "people.team-changed",
                    one.person(),
                    by,
                    people.printedName(one.person()) + " left the team " + one.team() + " of " + one.section()));
        });
        return member.isPresent();
    }

    private static Member member(ResultSet row) throws SQLException {
        return new Member(
                row.getObject("id", UUID.class),
                new CourseId(row.getObject("course_id", UUID.class)),
                row.getString("course") + "-" + row.getString("section"),
                row.getString("team"),
                new PersonId(row.getObject("person_id", UUID.class)),
                SqlTime.read(row, "from_at"),
                SqlTime.readNullable(row, "until_at"));
    }
}
