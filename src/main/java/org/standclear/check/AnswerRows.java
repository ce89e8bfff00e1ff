package org.standclear.check;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Collectors;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.standclear.platform.ids.AnswerId;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.RevisionId;
import org.standclear.platform.time.SqlTime;
import tools.jackson.databind.json.JsonMapper;

/** The table of answers; both engines refuse to change one. */
@Repository
class AnswerRows {

    private static final JsonMapper JSON = JsonMapper.builder().build();

    private static final String BRIEF = "id, revision_id, cell_id, cell_version, verdict, rule_set, answered_at";

    private final JdbcClient jdbc;

    AnswerRows(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** Lets equal questions about one revision be answered one after another. */
    void lock(RevisionId revision) {
        jdbc.sql("""
                select id from programs where id = (select program_id from program_revisions where id = :id)
                for update""")
                .param("id", revision.value())
                .query((row, number) -> row.getObject(1))
                .single();
    }

    Optional<StoredAnswer> find(Question question) {
        return jdbc.sql("""
                select * from check_answers where revision_id = :revision and cell_id = :cell
                    and cell_version = :version and limits = :limits and rule_set = :rules""")
                .param("revision", question.revision().value())
                .param("cell", question.cell().value())
                .param("version", question.cellVersion())
                .param("limits", question.limits())
                .param("rules", question.ruleSet())
                .query(AnswerRows::answer)
                .optional();
    }

    boolean standsOn(AnswerId id, String limits, String ruleSet) {
        return jdbc.sql("select count(*) from check_answers where id = :id and limits = :limits and rule_set = :rules")
                        .param("id", id.value())
                        .param("limits", limits)
                        .param("rules", ruleSet)
                        .query(Integer.class)
                        .single()
                == 1;
    }

    Optional<StoredAnswer> find(AnswerId id) {
        return jdbc.sql("select * from check_answers where id = :id")
                .param("id", id.value())
                .query(AnswerRows::answer)
                .optional();
    }

    Optional<AnswerDetails> details(AnswerId id) {
        return jdbc.sql("select details from check_answers where id = :id")
                .param("id", id.value())
                .query((row, number) -> JSON.readValue(row.getString("details"), AnswerDetails.class))
                .optional();
    }

    List<StoredAnswer> answersFor(RevisionId revision) {
        return jdbc.sql("select * from check_answers where revision_id = :id order by answered_at desc, id desc")
                .param("id", revision.value())
                .query(AnswerRows::answer)
                .list();
    }

    Optional<AnswerBrief> brief(AnswerId id) {
        return jdbc.sql("select " + BRIEF + " from check_answers where id = :id")
                .param("id", id.value())
                .query(AnswerRows::brief)
                .optional();
    }

    List<AnswerBrief> briefFor(RevisionId revision) {
        return jdbc.sql("select " + BRIEF
                        + " from check_answers where revision_id = :id order by answered_at desc, id desc")
                .param("id", revision.value())
                .query(AnswerRows::brief)
                .list();
    }

    Map<RevisionId, List<AnswerBrief>> briefsFor(Collection<RevisionId> revisions) {
        if (revisions.isEmpty()) {
            return Map.of();
        }
        return jdbc
                .sql("select " + BRIEF
                        + " from check_answers where revision_id in (:ids) order by answered_at desc, id desc")
                .param(
                        "ids",
                        revisions.stream().map(RevisionId::value).distinct().toList())
                .query(AnswerRows::brief)
                .list()
                .stream()
                .collect(Collectors.groupingBy(AnswerBrief::revision));
    }

    void add(StoredAnswer answer, Question question, AnswerDetails details) {
        jdbc.sql("""
                insert into check_answers (id, revision_id, cell_id, cell_version, limits, rule_set, verdict,
                    answer, bench, details, answered_at)
                values (:id, :revision, :cell, :version, :limits, :rules, :verdict, :answer, :bench, :details, :at)""")
                .param("id", answer.id().value())
                .param("revision", answer.revision().value())
                .param("cell", answer.cell().value())
                .param("version", answer.cellVersion())
                .param("limits", question.limits())
                .param("rules", answer.ruleSet())
                .param("verdict", answer.verdict().name())
                .param("answer", answer.json())
                .param("bench", JSON.writeValueAsString(answer.bench()))
                .param("details", JSON.writeValueAsString(details))
                .param("at", SqlTime.toSql(answer.at()))
                .update();
    }

    private static StoredAnswer answer(ResultSet row, int number) throws SQLException {
        return new StoredAnswer(
                new AnswerId(row.getObject("id", UUID.class)),
                new RevisionId(row.getObject("revision_id", UUID.class)),
                new CellId(row.getObject("cell_id", UUID.class)),
                row.getInt("cell_version"),
                StoredAnswer.Verdict.valueOf(row.getString("verdict")),
                row.getString("rule_set"),
                row.getString("answer"),
                JSON.readValue(row.getString("bench"), BenchFacts.class),
                SqlTime.read(row, "answered_at"));
    }

    private static AnswerBrief brief(ResultSet row, int number) throws SQLException {
        return new AnswerBrief(
                new AnswerId(row.getObject("id", UUID.class)),
                new RevisionId(row.getObject("revision_id", UUID.class)),
                new CellId(row.getObject("cell_id", UUID.class)),
                row.getInt("cell_version"),
                StoredAnswer.Verdict.valueOf(row.getString("verdict")),
                row.getString("rule_set"),
                SqlTime.read(row, "answered_at"));
    }

    /**
     * What is asked; equal questions have one answer.
     *
     * @param limits the course's limits in a fixed form
     */
    record Question(RevisionId revision, CellId cell, int cellVersion, String limits, String ruleSet) {}
}
