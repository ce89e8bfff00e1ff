package org.standclear.simulation;

import java.nio.charset.StandardCharsets;
import java.sql.Connection;
import java.sql.SQLException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;

/**
 * What an incident asks for is there, those who review it had no part in it, what was frozen is what it says, and every
 * step stands in the record. The same of cards from paper and of tools that were changed.
 */
final class IncidentRules {

    private static final String HOLDING =
            "('CONTACT', 'PROPERTY_DAMAGE', 'FIRST_AID', 'MEDICAL_TREATMENT', 'REPORTABLE')";

    /** Name, and a query that finds nothing while the rule holds. */
    private static final Map<String, String> ALWAYS = new LinkedHashMap<>();

    static {
        ALWAYS.put("an incident that holds its cell never held it", """
                select i.id from incidents i where i.class in %s and not exists (
                    select 1 from incident_steps s where s.incident_id = i.id and s.kind = 'CELL_HELD'
                    and exists (select 1 from cell_tags t where t.cell_id = i.cell_id and t.kind = 'HOLD'
                        and t.placed_at = s.taken_at))""".formatted(HOLDING));
        ALWAYS.put("an incident whose evidence is not frozen", """
                select i.id from incidents i where (i.class = 'PROTECTIVE_STOP' or i.class in %s)
                and not exists (select 1 from incident_evidence e where e.incident_id = i.id)""".formatted(HOLDING));
        ALWAYS.put("closed without what closing asks for", """
                select i.id from incidents i where i.state = 'CLOSED' and i.class <> 'PRECAUTIONARY_STOP' and (i.reviewer is null
                or i.form_due_at is not null and i.form_done_at is null
                or exists (select 1 from incident_actions a where a.incident_id = i.id and a.done_at is null)
                or i.class in %s and (
                    not exists (select 1 from incident_restarts r where r.incident_id = i.id and r.approved_at >= (
                        select max(h.taken_at) from incident_steps h where h.incident_id = i.id and h.kind = 'CELL_HELD'))
                    or not exists (select 1 from incident_risk_reviews r where r.incident_id = i.id)
                    or not exists (select 1 from incident_actions a where a.incident_id = i.id)
                    or (select count(distinct c.branch) from incident_causes c
                        where c.incident_id = i.id and c.struck_at is null) < 3))""".formatted(HOLDING));
        ALWAYS.put("an action whose owner says that it helped", """
                select id from incident_actions where checked_by = owner""");
        ALWAYS.put("a card from paper of fewer than three people", """
                select id from signoff_paper_cards where operator_id = attendant_id or operator_id = releaser_id
                or attendant_id = releaser_id or typed_at < written_at""");
        ALWAYS.put("a tool was changed without two who read the same", """
                select c.id from cell_tool_changes c join cell_equipment q on q.id = c.tool_id
                where c.version is not null and (select count(distinct r.read_by) from cell_tool_readings r
                    where r.cell_id = c.cell_id and r.read_at between c.begun_at and c.ended_at and r.tool_code = q.code
                    and r.offset_x_mm = q.offset_x_mm and r.offset_y_mm = q.offset_y_mm
                    and r.offset_z_mm = q.offset_z_mm) < 2""");
    }

    /** Who was in the run by the time of the report, and who reported it without having stood aside. */
    /** Who came in with a later start of the same run, after it was reported, had no part in it. */
    private static final String REVIEWED_BY_ONE_OF_THEM = """
            select s.id, s.kind from incident_steps s join incidents i on i.id = s.incident_id
            where s.taken_at > ? and s.kind in ('REVIEW_TAKEN', 'CLASSIFIED', 'CAUSE_ADDED', 'ACTION_AGREED',
                'RISK_ASSESSMENT', 'RESTART_APPROVED', 'CLOSED')
            and (i.reporter = s.taken_by and i.reporter_part in ('UNKNOWN', 'IN_IT')
                or exists (select 1 from run_events e join signoff_releases r on r.id = e.release_id
                    join signoff_sheets b on b.id = r.sheet_id
                    where e.run_id = i.run_id and e.kind = 'STARTED' and e.happened_at <= i.reported_at
                    and (s.taken_by in (b.operator_id, b.attendant_id, r.releaser_id)
                      or exists (select 1 from signoff_handovers h where h.release_id = r.id
                        and h.to_person = s.taken_by and h.signed_at <= i.reported_at))))""";

    private final Look look;
    private final Connection connection;

    IncidentRules(Look look) {
        this.look = look;
        connection = look.connection();
    }

    List<String> faults(Instant since, List<ChainReader.Entry> fresh) throws SQLException {
        List<String> faults = new ArrayList<>();
        for (Map.Entry<String, String> rule : ALWAYS.entrySet()) {
            faults.addAll(look.faults(rule.getKey(), rule.getValue()));
        }
        faults.addAll(look.faults("reviewed by somebody who had a part in it", REVIEWED_BY_ONE_OF_THEM, since));
        steps(since, fresh, faults);
        String heads = "select * from incident_evidence where frozen_at > ?";
        if (look.isAsked(heads)) {
            for (Map<String, Object> head : Rows.of(connection, heads, since)) {
                frozen(head, faults);
            }
        }
        return faults;
    }

    /** The record names each step by the hash of its words, and tells of none that was not taken. */
    private void steps(Instant since, List<ChainReader.Entry> fresh, List<String> faults) throws SQLException {
        List<String> told = fresh.stream()
                .filter(entry ->
                        !SignedRules.fact(entry.facts(), "words-sha256").isEmpty())
                .map(entry ->
                        entry.subject() + " " + entry.kind() + " " + SignedRules.fact(entry.facts(), "words-sha256"))
                .sorted()
                .toList();
        List<String> taken = Rows.of(connection, "select * from incident_steps where taken_at > ?", since).stream()
                .map(row -> row.get("incident_id") + " incident."
                        + Rows.text(row, "kind")
                                .toLowerCase(java.util.Locale.ROOT)
                                .replace('_', '-')
                        + " " + sha256(Rows.text(row, "words")))
                .sorted()
                .toList();
        if (!told.equals(taken)) {
            faults.add("steps of incidents are " + taken + ", the record tells of " + told);
        }
    }

    /** The list of pieces has the hash of its head, and names the very bytes of program and cell file. */
    private void frozen(Map<String, Object> head, List<String> faults) throws SQLException {
        StringBuilder lines = new StringBuilder();
        List<Map<String, Object>> pieces = Rows.of(
                connection,
                "select * from incident_evidence_pieces where evidence_id = ? order by number",
                Objects.requireNonNull(head.get("id")));
        for (Map<String, Object> piece : pieces) {
            lines.append(String.join(
                            "\t",
                            Rows.text(piece, "kind"),
                            Rows.text(piece, "reference"),
                            Rows.text(piece, "words"),
                            Rows.text(piece, "sha256")))
                    .append('\n');
        }
        if (pieces.size() != Rows.number(head, "pieces")
                || !sha256(lines.toString()).equals(Rows.text(head, "sha256"))) {
            faults.add("frozen evidence " + head.get("id") + " is another list");
        }
        faults.addAll(look.faults("frozen evidence names other contents", """
                select p.number, p.kind from incident_evidence_pieces p
                join incident_evidence e on e.id = p.evidence_id join incidents i on i.id = e.incident_id
                where e.id = ? and (
                    p.kind = 'cell version' and p.sha256 <> coalesce((select lower(rawtohex(hash('SHA-256', stringtoutf8(v.file))))
                        from cell_versions v where v.cell_id = i.cell_id and cast(v.number as varchar) = p.reference), '')
                    or p.kind = 'program' and p.sha256 <> coalesce((select lower(rawtohex(hash('SHA-256', c.bytes)))
                        from program_revisions r join program_contents c on c.id = r.content_id
                        where cast(r.id as varchar) = p.reference), ''))""", Objects.requireNonNull(head.get("id"))));
    }

    private static String sha256(String text) {
        return ChainReader.sha256(text.getBytes(StandardCharsets.UTF_8));
    }
}
