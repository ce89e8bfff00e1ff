package org.standclear.report.records;

import java.util.HashSet;
import java.util.Set;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.standclear.platform.retention.Concern;
import org.standclear.platform.retention.KeepsBack;

/**
 * Nothing about a person is disposed of while a question of theirs about their record waits for its answer: 34 CFR 99.10(e)
 * asks the like of education records while somebody has asked to see them.
 */
@Component
class OpenQuestions implements KeepsBack {

    private final JdbcClient jdbc;

    OpenQuestions(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    @Override
    public Reasons now() {
        Set<UUID> askers =
                new HashSet<>(jdbc.sql("select distinct asked_by from report_questions where answered_at is null")
                        .query(UUID.class)
                        .list());
        return (kind, record) -> askers.stream().anyMatch(person -> record.concerns(Concern.About.PERSON, person))
                ? "a question about the person’s own record waits for its answer"
                : "";
    }
}
