package org.standclear.report.records;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.standclear.people.People;
import org.standclear.platform.access.AccessLog;
import org.standclear.platform.access.AccessLog.Look;
import org.standclear.platform.ids.Id;
import org.standclear.platform.ids.LabId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.ids.RunId;
import org.standclear.platform.lab.LabScope;
import org.standclear.platform.lab.Labs;
import org.standclear.platform.time.SqlTime;
import org.standclear.report.OwnRecords;
import org.standclear.trail.Trail;
import org.standclear.trail.TrailEntry;

/** Questions in the database; what they are about is never changed by them. */
@Service
class JdbcOwnRecords implements OwnRecords {

    /** More than a year of a busy student. */
    private static final int SHOWN = 200;

    private static final int ALL = 100_000;

    private final JdbcClient jdbc;
    private final OwnRows rows;
    private final People people;
    private final Labs labs;
    private final AccessLog looks;
    private final Trail trail;
    private final Clock clock;

    JdbcOwnRecords(JdbcClient jdbc, OwnRows rows, People people, Labs labs, AccessLog looks, Trail trail, Clock clock) {
        this.jdbc = jdbc;
        this.rows = rows;
        this.people = people;
        this.labs = labs;
        this.looks = looks;
        this.trail = trail;
        this.clock = clock;
    }

    @Override
    @Transactional(readOnly = true)
    public List<Section> of(PersonId person) {
        return sections(person, SHOWN);
    }

    @Override
    @Transactional(readOnly = true)
    public List<Section> whole(PersonId person) {
        return sections(person, ALL);
    }

    private List<Section> sections(PersonId person, int most) {
        List<Section> sections = new ArrayList<>(rows.of(person, most));
        List<Look> seen = looks.at(person, most);
        Map<PersonId, String> viewers =
                people.printedNames(seen.stream().map(Look::viewer).toList());
        sections.add(new Section(
                "Who looked at your record",
                seen.stream()
                        .map(look -> rows.entry(
                                look.at(),
                                lab(),
                                viewers.get(look.viewer()) + ", " + look.sight().words()))
                        .toList()));
        return sections;
    }

    @Override
    @Transactional(readOnly = true)
    public List<Question> questionsOf(PersonId person) {
        return jdbc.sql("select * from report_questions where asked_by = :person order by asked_at desc, id desc")
                .param("person", person.value())
                .query(JdbcOwnRecords::question)
                .list();
    }

    @Override
    @Transactional(readOnly = true)
    public List<Question> questions() {
        return jdbc.sql("""
                select * from report_questions where lab_id = :lab
                order by case when answered_at is null then 0 else 1 end, asked_at, id fetch first 200 rows only""")
                .param("lab", lab().value())
                .query(JdbcOwnRecords::question)
                .list();
    }

    @Override
    @Transactional(readOnly = true)
    public List<Question> questionsAbout(
            Collection<PersonId> people, Collection<String> beginnings, Collection<String> hashes) {
        return people.stream()
                .distinct()
                .flatMap(person -> questionsOf(person).stream())
                .filter(question -> beginnings.stream().anyMatch(question.about()::startsWith)
                        || hashes.stream().anyMatch(question.about()::contains))
                .sorted(Comparator.comparing(Question::askedAt))
                .toList();
    }

    private static Question question(ResultSet row, int number) throws SQLException {
        return new Question(
                row.getObject("id", UUID.class),
                new PersonId(row.getObject("asked_by", UUID.class)),
                row.getString("about"),
                row.getString("words"),
                SqlTime.read(row, "asked_at"),
                answer(row));
    }

    private static @Nullable Answer answer(ResultSet row) throws SQLException {
        Instant at = SqlTime.readNullable(row, "answered_at");
        return at == null
                ? null
                : new Answer(row.getString("answer"), new PersonId(row.getObject("answered_by", UUID.class)), at);
    }

    @Override
    @Transactional
    public Outcome ask(PersonId by, String about, String words) {
        Optional<Entry> line = sections(by, SHOWN).stream()
                .flatMap(section -> section.entries().stream())
                .filter(entry -> entry.line().equals(about))
                .findFirst();
        if (line.isEmpty()) {
            return new Outcome.Refused("about", "Choose one of the lines above.");
        }
        LabScope.run(line.get().lab(), () -> keep(by, about, words));
        return new Outcome.Kept();
    }

    /** Those who know the line answer: the question is for the lab that it is of. */
    private void keep(PersonId by, String about, String words) {
        UUID id = Id.newValue();
        jdbc.sql("""
                insert into report_questions (id, lab_id, asked_by, about, words, asked_at)
                values (:id, :lab, :by, :about, :words, :at)""")
                .param("id", id)
                .param("lab", lab().value())
                .param("by", by.value())
                .param("about", about.length() > 300 ? about.substring(0, 300) : about)
                .param("words", words)
                .param("at", SqlTime.toSql(now()))
                .update();
        tell("report.question-asked", id, by, people.printedName(by) + " asked about a line of their own record.");
    }

    @Override
    @Transactional
    public Outcome answer(UUID question, String words, PersonId by) {
        int answered = jdbc.sql("""
                update report_questions set answer = :words, answered_by = :by, answered_at = :at
                where id = :id and answered_at is null and asked_by <> :by""")
                .param("words", words)
                .param("by", by.value())
                .param("at", SqlTime.toSql(now()))
                .param("id", question)
                .update();
        if (answered == 0) {
            return new Outcome.Refused(
                    "words", "It is answered already, or it is your own question, which somebody else answers.");
        }
        tell("report.question-answered", question, by, people.printedName(by) + " answered a question about a record.");
        return new Outcome.Kept();
    }

    @Override
    @Transactional
    public void printed(RunId run, PersonId by) {
        tell("report.run-printed", run, by, people.printedName(by) + " printed the paper of this run, with names.");
    }

    private void tell(String kind, Object subject, PersonId by, String words) {
        trail.append(TrailEntry.of(lab(), kind, subject, by, words));
    }

    private LabId lab() {
        return labs.theLab().id();
    }

    private Instant now() {
        return SqlTime.stored(clock.instant());
    }
}
