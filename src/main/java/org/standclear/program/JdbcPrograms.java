package org.standclear.program;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.standclear.people.People;
import org.standclear.people.Person;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.ids.ProgramId;
import org.standclear.platform.ids.RevisionId;
import org.standclear.platform.lab.Labs;
import org.standclear.platform.time.SqlTime;

/** Programs as the tables have them. */
@Repository
class JdbcPrograms implements Programs {

    private static final String LATEST =
            "select r.* from programs p join program_revisions r on r.program_id = p.id and r.number = p.latest_number";

    private final JdbcClient jdbc;
    private final People people;
    private final Labs labs;

    JdbcPrograms(JdbcClient jdbc, People people, Labs labs) {
        this.jdbc = jdbc;
        this.people = people;
        this.labs = labs;
    }

    @Override
    public Optional<Revision> find(RevisionId id) {
        return jdbc.sql("select * from program_revisions where id = :id")
                .param("id", id.value())
                .query(RevisionRows::revision)
                .optional();
    }

    @Override
    public Optional<Revision> findFor(PersonId person, RevisionId id) {
        return find(id).filter(revision -> maySee(person, revision));
    }

    @Override
    public List<Revision> revisions(ProgramId program) {
        return jdbc.sql("select * from program_revisions where program_id = :id order by number desc")
                .param("id", program.value())
                .query(RevisionRows::revision)
                .list();
    }

    @Override
    public List<Revision> revisionsFor(PersonId person, ProgramId program) {
        List<Revision> all = revisions(program);
        return !all.isEmpty() && maySee(person, all.get(0)) ? all : List.of();
    }

    @Override
    public List<Revision> latestOf(PersonId author) {
        return jdbc.sql(LATEST + " where p.lab_id = :lab and p.author = :author order by p.changed_at desc, p.id desc")
                .param("author", author.value())
                .param("lab", labs.theLab().id().value())
                .query(RevisionRows::revision)
                .list();
    }

    @Override
    public Page page(PageRequest request) {
        Position after = request.after();
        String sql = LATEST + " where p.lab_id = :lab"
                + (request.author() == null ? "" : " and p.author = :author")
                + (after == null ? "" : " and (p.changed_at < :at or (p.changed_at = :at and p.id < :program))")
                + " order by p.changed_at desc, p.id desc fetch first :size rows only";
        var query = jdbc.sql(sql).param("lab", labs.theLab().id().value()).param("size", request.size() + 1);
        if (request.author() != null) {
            query = query.param("author", request.author().value());
        }
        if (after != null) {
            query = query.param("at", SqlTime.toSql(after.changedAt())).param("program", after.program());
        }
        List<Revision> found = query.query(RevisionRows::revision).list();
        boolean more = found.size() > request.size();
        List<Revision> shown = more ? found.subList(0, request.size()) : found;
        return new Page(shown, more ? position(shown.get(shown.size() - 1)) : null);
    }

    // a program's latest change is the upload of its latest revision
    private static Position position(Revision last) {
        return new Position(last.uploadedAt(), last.program().value());
    }

    @Override
    public byte[] bytes(RevisionId id) {
        return jdbc.sql("""
                select c.bytes from program_contents c join program_revisions r on r.content_id = c.id
                where r.id = :id""")
                .param("id", id.value())
                .query((row, number) -> row.getBytes("bytes"))
                .single();
    }

    @Override
    public Optional<Instant> takenOutAt(RevisionId id) {
        return jdbc.sql("""
                select c.taken_out_at from program_contents c join program_revisions r on r.content_id = c.id
                where r.id = :id and c.taken_out_at is not null""")
                .param("id", id.value())
                .query((row, number) -> SqlTime.read(row, "taken_out_at"))
                .optional();
    }

    private boolean maySee(PersonId person, Revision revision) {
        return revision.author().equals(person)
                || people.find(person).filter(Person::isLabStaff).isPresent();
    }
}
