package org.standclear.cell;

import java.time.Instant;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.time.SqlTime;

/** Writes cells and their versions; both engines refuse to change a version. */
@Repository
class CellVersionRows {

    private final JdbcClient jdbc;

    CellVersionRows(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** A new cell with its first version in force. */
    CellId addCell(Approval approval) {
        CellProposal proposal = approval.proposal();
        CellId cell = CellId.next();
        jdbc.sql("""
                insert into cells (id, lab_id, name, state, state_reason, current_version, start_offset_minutes)
                values (:id, :lab, :name, 'IN_SERVICE', '', :number, :offset)""")
                .param("id", cell.value())
                .param("lab", proposal.lab().value())
                .param("name", proposal.cellName())
                .param("number", proposal.number())
                .param("offset", proposal.startOffsetMinutes())
                .update();
        addVersion(cell, approval);
        return cell;
    }

    /** The next version of a cell, in force from now. */
    CellId addTo(CellId cell, Approval approval) {
        addVersion(cell, approval);
        jdbc.sql("update cells set current_version = :number where id = :id")
                .param("number", approval.proposal().number())
                .param("id", cell.value())
                .update();
        return cell;
    }

    private void addVersion(CellId cell, Approval approval) {
        CellProposal proposal = approval.proposal();
        jdbc.sql("""
                insert into cell_versions (cell_id, number, file, sha256, fitted_tool, proposed_by, approved_by,
                    in_force_since, reason)
                values (:cell, :number, :file, :sha256, :tool, :proposedBy, :approvedBy, :at, :reason)""")
                .param("cell", cell.value())
                .param("number", proposal.number())
                .param("file", proposal.file())
                .param("sha256", proposal.sha256())
                .param("tool", approval.fittedTool())
                .param("proposedBy", proposal.proposedBy().value())
                .param("approvedBy", approval.by().value())
                .param("at", SqlTime.toSql(approval.at()))
                .param("reason", proposal.reason())
                .update();
    }

    /** What is written when a proposal is approved. */
    record Approval(CellProposal proposal, String fittedTool, PersonId by, Instant at) {}
}
