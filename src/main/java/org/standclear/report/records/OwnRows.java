package org.standclear.report.records;

import java.util.List;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.time.LabTime;
import org.standclear.platform.time.SqlTime;
import org.standclear.report.OwnRecords.Section;

/** A person's lines in the tables of all features. */
@Repository
class OwnRows {

    /** More than a year of a busy student. */
    private static final int MOST = 200;

    private final JdbcClient jdbc;
    private final LabTime labTime;

    OwnRows(JdbcClient jdbc, LabTime labTime) {
        this.jdbc = jdbc;
        this.labTime = labTime;
    }

    List<Section> of(PersonId person) {
        return List.of(
                section(person, "Runs", """
                        select r.started_at as at, c.name || ', as ' || p.part || ', ' || r.passes || ' passes, ' || r.stops
                            || ' stops' as words
                        from run_people p join runs r on r.id = p.run_id join cells c on c.id = r.cell_id
                        where p.person_id = :person order by r.started_at desc, r.id, p.part"""),
                section(person, "Bookings", """
                        select b.starts_at as at, c.name || ', ' || lower(replace(b.state, '_', ' '))
                            || case when b.operator_id = :person then ', as operator' else ', as e-stop attendant' end as words
                        from bookings b join cells c on c.id = b.cell_id
                        where b.operator_id = :person or b.attendant_id = :person order by b.starts_at desc, b.id"""),
                section(person, "Signatures", """
                        select g.signed_at as at, s.list || ' list as ' || g.part || ', signed as ' || g.printed_name
                            || ', SHA-256 ' || g.statement_sha256 as words
                        from signoff_signatures g join signoff_sheets s on s.id = g.sheet_id
                        where g.signer = :person order by g.signed_at desc, g.id"""),
                section(person, "Authorisations", """
                        select a.granted_at as at, lower(a.duty) || ', ' || a.reason
                            || case when a.revoked_at is null then '' else ', ended early: ' || a.revoke_reason end as words
                        from authorisations a where a.person_id = :person order by a.granted_at desc, a.id"""),
                section(person, "Papers printed of your runs, with your name", """
                        select t.at as at, t.words as words from trail_entries t where t.kind = 'report.run-printed'
                        and t.subject in (select cast(p.run_id as varchar(36)) from run_people p where p.person_id = :person)
                        order by t.sequence desc"""));
    }

    private Section section(PersonId person, String title, String sql) {
        return new Section(
                title,
                jdbc.sql(sql + " fetch first " + MOST + " rows only")
                        .param("person", person.value())
                        .query((row, number) -> labTime.full(SqlTime.read(row, "at")) + ": " + row.getString("words"))
                        .list());
    }
}
