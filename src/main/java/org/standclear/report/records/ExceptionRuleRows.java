package org.standclear.report.records;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.standclear.platform.ids.LabId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.time.SqlTime;
import org.standclear.report.ExceptionRule;
import org.standclear.report.records.ExceptionQueries.Query;

/** Which rules are in force, and every change of them. */
@Repository
class ExceptionRuleRows {

    private final JdbcClient jdbc;

    ExceptionRuleRows(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    ExceptionRule inForce(LabId lab, Query rule) {
        return jdbc.sql("""
                select active, threshold from report_exception_rules where lab_id = :lab and code = :code
                order by number desc fetch first 1 row only""")
                .param("lab", lab.value())
                .param("code", rule.code())
                .query((row, number) -> rule(rule, row.getBoolean("active"), row.getInt("threshold")))
                .optional()
                .orElseGet(() -> rule(rule, true, rule.threshold()));
    }

    private static ExceptionRule rule(Query rule, boolean active, int threshold) {
        return new ExceptionRule(rule.code(), rule.title(), rule.reason(), threshold, rule.unit(), active);
    }

    List<ExceptionRule> all(LabId lab) {
        return ExceptionQueries.ALL.stream().map(rule -> inForce(lab, rule)).toList();
    }

    Optional<Query> find(String code) {
        return ExceptionQueries.ALL.stream()
                .filter(rule -> rule.code().equals(code))
                .findFirst();
    }

    void change(LabId lab, ExceptionRule wanted, String reason, PersonId by, Instant at) {
        jdbc.sql("""
                insert into report_exception_rules (lab_id, code, number, active, threshold, changed_by, changed_at, reason)
                select :lab, :code, coalesce(max(number), 0) + 1, :active, :threshold, :by, :at, :reason
                from report_exception_rules where lab_id = :lab and code = :code""")
                .param("lab", lab.value())
                .param("code", wanted.code())
                .param("active", wanted.active())
                .param("threshold", wanted.threshold())
                .param("by", by.value())
                .param("at", SqlTime.toSql(at))
                .param("reason", reason)
                .update();
    }
}
