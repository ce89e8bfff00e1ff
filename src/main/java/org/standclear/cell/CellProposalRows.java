package org.standclear.cell;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Types;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.LabId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.time.SqlTime;

/** The table of proposals; only the decision is ever added to a row. */
@Repository
class CellProposalRows {

    private final JdbcClient jdbc;

    CellProposalRows(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    void add(CellProposal proposal) {
        CellId cell = proposal.cell();
        jdbc.sql("""
                insert into cell_proposals (id, lab_id, cell_id, cell_name, number, start_offset_minutes, file, sha256,
                    reason, proposed_by, proposed_at, state)
                values (:id, :lab, :cell, :name, :number, :offset, :file, :sha256, :reason, :by, :at, :state)""")
                .param("id", proposal.id())
                .param("lab", proposal.lab().value())
                .param("cell", cell == null ? null : cell.value(), Types.OTHER)
                .param("name", proposal.cellName())
                .param("number", proposal.number())
                .param("offset", proposal.startOffsetMinutes())
                .param("file", proposal.file())
                .param("sha256", proposal.sha256())
                .param("reason", proposal.reason())
                .param("by", proposal.proposedBy().value())
                .param("at", SqlTime.toSql(proposal.proposedAt()))
                .param("state", proposal.state().name())
                .update();
    }

    void decide(UUID id, CellProposal.State state, CellProposal.Decision decision, CellId cell) {
        decide(id, state, decision);
        jdbc.sql("update cell_proposals set cell_id = :cell where id = :id")
                .param("cell", cell.value())
                .param("id", id)
                .update();
    }

    void decide(UUID id, CellProposal.State state, CellProposal.Decision decision) {
        jdbc.sql("""
                update cell_proposals set state = :state, decided_by = :by, decided_at = :at, decision_reason = :reason
                where id = :id and state = 'OPEN'""")
                .param("state", state.name())
                .param("by", decision.by().value())
                .param("at", SqlTime.toSql(decision.at()))
                .param("reason", decision.reason())
                .param("id", id)
                .update();
    }

    Optional<CellProposal> find(UUID id) {
        return jdbc.sql("select * from cell_proposals where id = :id")
                .param("id", id)
                .query(CellProposalRows::proposal)
                .optional();
    }

    Optional<CellProposal> lock(UUID id) {
        return jdbc.sql("select * from cell_proposals where id = :id for update")
                .param("id", id)
                .query(CellProposalRows::proposal)
                .optional();
    }

    List<CellProposal> waiting(LabId lab) {
        return jdbc.sql("""
                select * from cell_proposals where lab_id = :lab and state = 'OPEN' order by proposed_at, id""")
                .param("lab", lab.value())
                .query(CellProposalRows::proposal)
                .list();
    }

    List<CellProposal> of(CellId cell) {
        return jdbc.sql("select * from cell_proposals where cell_id = :cell order by proposed_at desc, id desc")
                .param("cell", cell.value())
                .query(CellProposalRows::proposal)
                .list();
    }

    private static CellProposal proposal(ResultSet row, int number) throws SQLException {
        UUID cell = row.getObject("cell_id", UUID.class);
        UUID decidedBy = row.getObject("decided_by", UUID.class);
        Instant decidedAt = SqlTime.readNullable(row, "decided_at");
        return new CellProposal(
                row.getObject("id", UUID.class),
                new LabId(row.getObject("lab_id", UUID.class)),
                cell == null ? null : new CellId(cell),
                row.getString("cell_name"),
                row.getInt("number"),
                row.getInt("start_offset_minutes"),
                row.getString("file"),
                row.getString("sha256"),
                row.getString("reason"),
                new PersonId(row.getObject("proposed_by", UUID.class)),
                SqlTime.read(row, "proposed_at"),
                CellProposal.State.valueOf(row.getString("state")),
                decidedBy == null || decidedAt == null
                        ? null
                        : new CellProposal.Decision(
                                new PersonId(decidedBy), decidedAt, row.getString("decision_reason")));
    }
}
