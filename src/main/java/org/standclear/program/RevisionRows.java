package org.standclear.program;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.Optional;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.standclear.platform.ids.LabId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.ids.ProgramId;
import org.standclear.platform.ids.RevisionId;
import org.standclear.platform.time.SqlTime;

/** Writes programs, contents and revisions; both engines refuse to change the last two. */
@Repository
class RevisionRows {

    private final JdbcClient jdbc;

    RevisionRows(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** Locks the program's row, so that its revisions are numbered one after another. */
    Optional<PersonId> lockAuthor(ProgramId program) {
        return jdbc.sql("select author from programs where id = :id for update")
                .param("id", program.value())
                .query((row, number) -> new PersonId(row.getObject("author", UUID.class)))
                .optional();
    }

    void addProgram(LabId lab, Revision first) {
        jdbc.sql("""
                insert into programs (id, lab_id, author, latest_number, changed_at)
                values (:id, :lab, :author, 1, :at)""")
                .param("id", first.program().value())
                .param("lab", lab.value())
                .param("author", first.author().value())
                .param("at", SqlTime.toSql(first.uploadedAt()))
                .update();
    }

    void touchProgram(Revision latest) {
        jdbc.sql("update programs set latest_number = :number, changed_at = :at where id = :id")
                .param("number", latest.number())
                .param("at", SqlTime.toSql(latest.uploadedAt()))
                .param("id", latest.program().value())
                .update();
    }

    UUID addContent(UUID id, String sha256, byte[] bytes) {
        jdbc.sql("insert into program_contents (id, sha256, bytes) values (:id, :sha256, :bytes)")
                .param("id", id)
                .param("sha256", sha256)
                .param("bytes", bytes)
                .update();
        return id;
    }

    UUID contentOf(RevisionId revision) {
        return jdbc.sql("select content_id from program_revisions where id = :id")
                .param("id", revision.value())
                .query(UUID.class)
                .single();
    }

    void addRevision(Revision revision, UUID content) {
        jdbc.sql("""
                insert into program_revisions (id, program_id, number, content_id, title, file_name, author,
                    uploaded_at, sha256, size_bytes, declaration, declaration_sha256)
                values (:id, :program, :number, :content, :title, :fileName, :author, :at, :sha256, :size,
                    :declaration, :declarationSha256)""")
                .param("id", revision.id().value())
                .param("program", revision.program().value())
                .param("number", revision.number())
                .param("content", content)
                .param("title", revision.title())
                .param("fileName", revision.fileName())
                .param("author", revision.author().value())
                .param("at", SqlTime.toSql(revision.uploadedAt()))
                .param("sha256", revision.sha256())
                .param("size", revision.sizeBytes())
                .param("declaration", revision.declaration(), java.sql.Types.VARCHAR)
                .param("declarationSha256", revision.declarationSha256())
                .update();
    }

    static Revision revision(ResultSet row, int number) throws SQLException {
        Instant at = SqlTime.read(row, "uploaded_at");
        return new Revision(
                new RevisionId(row.getObject("id", UUID.class)),
                new ProgramId(row.getObject("program_id", UUID.class)),
                row.getInt("number"),
                row.getString("title"),
                row.getString("file_name"),
                new PersonId(row.getObject("author", UUID.class)),
                at,
                row.getString("sha256"),
                row.getInt("size_bytes"),
                row.getString("declaration"),
                row.getString("declaration_sha256"));
    }
}
