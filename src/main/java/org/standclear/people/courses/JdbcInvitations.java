package org.standclear.people.courses;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.time.Duration;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.standclear.people.Course;
import org.standclear.people.CourseRegister;
import org.standclear.people.Courses;
import org.standclear.people.Invitations;
import org.standclear.people.People;
import org.standclear.people.Person;
import org.standclear.platform.ids.CourseId;
import org.standclear.platform.ids.Id;
import org.standclear.platform.ids.LabId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.ids.SectionId;
import org.standclear.platform.lab.LabScope;
import org.standclear.platform.lab.Labs;
import org.standclear.platform.time.SqlTime;
import org.standclear.trail.Trail;
import org.standclear.trail.TrailEntry;

/** Invitations in the database; one that nobody answers in a month is forgotten. */
@Service
@Transactional
class JdbcInvitations implements Invitations {

    private static final Duration STANDS = Duration.ofDays(30);

    private static final String STANDING = """
            select i.id, i.lab_id, i.section_id, i.login, i.asked_by, i.asked_at, s.code, s.course_id, c.title
            from course_invitations i join sections s on s.id = i.section_id join courses c on c.id = s.course_id
            where i.asked_at > :since and\s""";

    private final JdbcClient jdbc;
    private final CourseRegister register;
    private final Courses courses;
    private final People people;
    private final Letters letters;
    private final Labs labs;
    private final Trail trail;
    private final Clock clock;

    JdbcInvitations(
            JdbcClient jdbc,
            CourseRegister register,
            Courses courses,
            People people,
            Letters letters,
            Labs labs,
            Trail trail,
            Clock clock) {
        this.jdbc = jdbc;
        this.register = register;
        this.courses = courses;
        this.people = people;
        this.letters = letters;
        this.labs = labs;
        this.trail = trail;
        this.clock = clock;
    }

    private record Row(UUID id, LabId lab, SectionId section, Waiting waiting, CourseId course, String title) {

        Asked asked(String lab) {
            return new Asked(id, lab, title, waiting.section(), waiting.by(), waiting.at());
        }
    }

    @Override
    public void invite(String login, SectionId section, PersonId by) {
        jdbc.sql("delete from course_invitations where asked_at <= :since")
                .param("since", since())
                .update();
        String name = login.strip().toLowerCase(Locale.ROOT);
        boolean stands = !standing(
                        "i.section_id = :section and i.login = :login",
                        Map.of("section", section.value(), "login", name))
                .isEmpty();
        if (stands) {
            return;
        }
        jdbc.sql("""
                insert into course_invitations (id, lab_id, section_id, login, asked_by, asked_at)
                values (:id, :lab, :section, :login, :by, :at)""")
                .param("id", Id.newValue())
                .param("lab", labs.theLab().id().value())
                .param("section", section.value())
                .param("login", name)
                .param("by", by.value())
                .param("at", SqlTime.toSql(clock.instant()))
                .update();
        tell("people.invited", section, by, "\"" + name + "\" was asked into a section.");
        Course course = courses.find(courseOf(section)).orElseThrow();
        people.byLogin(name)
                .filter(Person::active)
                .ifPresent(person -> letters.asked(person.id(), labs.theLab().name(), course.title()));
    }

    private CourseId courseOf(SectionId section) {
        return new CourseId(jdbc.sql("select course_id from sections where id = :id")
                .param("id", section.value())
                .query(UUID.class)
                .single());
    }

    @Override
    @Transactional(readOnly = true)
    public List<Waiting> waiting(CourseId course) {
        return standing("s.course_id = :course order by s.code, i.login", Map.of("course", course.value())).stream()
                .map(Row::waiting)
                .toList();
    }

    @Override
    public boolean withdraw(CourseId course, UUID invitation, PersonId by) {
        Optional<Row> row = standing("i.id = :id", Map.of("id", invitation)).stream()
                .filter(one -> one.course().equals(course))
                .findFirst();
        row.filter(one -> end(one.id()))
                .ifPresent(one -> tell(
                        "people.invitation-withdrawn",
                        one.section(),
                        by,
                        "\"" + one.waiting().login() + "\" is no longer asked into a section."));
        return row.isPresent();
    }

    @Override
    @Transactional(readOnly = true)
    public List<Asked> of(Person person) {
        return mine(person).stream().map(row -> row.asked(nameOf(row.lab()))).toList();
    }

    @Override
    public Optional<Asked> accept(UUID invitation, Person person) {
        return one(invitation, person)
                .filter(row -> end(row.id()))
                .map(row -> LabScope.in(row.lab(), () -> {
                    register.enrol(person.id(), row.section(), person.id());
                    return row.asked(nameOf(row.lab()));
                }));
    }

    @Override
    public boolean decline(UUID invitation, Person person) {
        Optional<Row> row = one(invitation, person).filter(found -> end(found.id()));
        row.ifPresent(found -> LabScope.run(
                found.lab(),
                () -> trail.append(TrailEntry.of(
                        found.lab(),
                        "people.invitation-ended",
                        found.section(),
                        null,
                        "\"" + found.waiting().login() + "\" is no longer asked into a section."))));
        return row.isPresent();
    }

    private Optional<Row> one(UUID invitation, Person person) {
        return mine(person).stream().filter(row -> row.id().equals(invitation)).findFirst();
    }

    private List<Row> mine(Person person) {
        return standing("i.login = :login order by i.asked_at, i.id", Map.of("login", person.login()));
    }

    private List<Row> standing(String which, Map<String, ?> values) {
        return jdbc.sql(STANDING + which)
                .param("since", since())
                .params(values)
                .query(JdbcInvitations::row)
                .list();
    }

    private static Row row(ResultSet row, int number) throws SQLException {
        UUID id = row.getObject("id", UUID.class);
        return new Row(
                id,
                new LabId(row.getObject("lab_id", UUID.class)),
                new SectionId(row.getObject("section_id", UUID.class)),
                new Waiting(
                        id,
                        row.getString("login"),
                        row.getString("code"),
                        new PersonId(row.getObject("asked_by", UUID.class)),
                        SqlTime.read(row, "asked_at")),
                new CourseId(row.getObject("course_id", UUID.class)),
                row.getString("title"));
    }

    private boolean end(UUID id) {
        return jdbc.sql("delete from course_invitations where id = :id")
                        .param("id", id)
                        .update()
                == 1;
    }

    private String nameOf(LabId lab) {
        return labs.find(lab).orElseThrow().name();
    }

    private Object since() {
        return Objects.requireNonNull(SqlTime.toSql(clock.instant().minus(STANDS)));
    }

    private void tell(String kind, SectionId section, PersonId by, String words) {
        trail.append(TrailEntry.of(labs.theLab().id(), kind, section, by, words));
    }
}
