package org.standclear.report.records;

import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.springframework.beans.factory.annotation.Autowired;
import org.standclear.incident.IncidentCases;
import org.standclear.platform.ids.LabId;
import org.standclear.platform.lab.Labs;
import org.standclear.platform.time.SqlTime;

/** What tests of a week's exceptions share: asking one rule, and bench lists like one that was signed. */
abstract class ExceptionCases extends IncidentCases {

    static final LocalDate MONDAY = LocalDate.of(2026, 3, 9);

    @Autowired
    ExceptionRows rows;

    @Autowired
    Labs everyLab;

    LabId lab() {
        return everyLab.theLab().id();
    }

    /** What the rule finds in the week of the scene, by that threshold. */
    List<ExceptionRows.Found> found(String code, int threshold) {
        Days days = new Days(
                lab(),
                MONDAY.atStartOfDay(labTime.zone()).toInstant(),
                MONDAY.plusDays(7).atStartOfDay(labTime.zone()).toInstant(),
                MONDAY,
                today().isBefore(MONDAY.plusDays(7)) ? today() : MONDAY.plusDays(7));
        ExceptionQueries.Query rule = ExceptionQueries.ALL.stream()
                .filter(one -> one.code().equals(code))
                .findFirst()
                .orElseThrow();
        return rows.of(rule, threshold, days, clock.instant());
    }

    List<UUID> ids(String code) {
        return ids(code, 1);
    }

    List<UUID> ids(String code, int threshold) {
        return found(code, threshold).stream().map(ExceptionRows.Found::id).toList();
    }

    /** The bench list of the scene's booking that was signed by all three. */
    UUID signedList() {
        return jdbc.sql("select id from signoff_sheets where booking_id = :id and list = 'bench' and outcome = 'DONE'")
                .param("id", scene().booking.value())
                .query(UUID.class)
                .single();
    }

    /** The same list once more, that many minutes from now, its answers with something added. */
    UUID copied(UUID sheet, int minutes, String otherwise) {
        UUID copy = UUID.randomUUID();
        jdbc.sql("""
                insert into signoff_sheets (id, booking_id, cell_id, round_number, list, brief, revision_id, cell_version,
                    answer_id, operator_id, attendant_id, opened_at, closed_at, outcome, because)
                select :copy, booking_id, cell_id, round_number + 10 * :minutes, list, brief, revision_id, cell_version,
                    answer_id, operator_id, attendant_id, opened_at, :at, outcome, because
                from signoff_sheets where id = :sheet""")
                .param("copy", copy)
                .param("minutes", minutes)
                .param("at", SqlTime.toSql(clock.instant().plusSeconds(60L * minutes)))
                .param("sheet", sheet)
                .update();
        for (String part : List.of("operator", "attendant", "releaser")) {
            UUID signature = UUID.randomUUID();
            jdbc.sql("""
                    insert into signoff_signatures (id, sheet_id, part, signer, printed_name, signed_at, meaning, statement,
                        statement_sha256, method, agreed)
                    select :signature, :copy, part, signer, printed_name, signed_at, meaning, statement, statement_sha256,
                        method, agreed from signoff_signatures where sheet_id = :sheet and part = :part""")
                    .param("signature", signature)
                    .param("copy", copy)
                    .param("sheet", sheet)
                    .param("part", part)
                    .update();
            jdbc.sql("""
                    insert into signoff_answers (signature_id, item, field, answer)
                    select :signature, a.item, a.field, concat(a.answer, :otherwise) from signoff_answers a
                    join signoff_signatures g on g.id = a.signature_id where g.sheet_id = :sheet and g.part = :part""")
                    .param("signature", signature)
                    .param("otherwise", otherwise)
                    .param("sheet", sheet)
                    .param("part", part)
                    .update();
        }
        return copy;
    }
}
