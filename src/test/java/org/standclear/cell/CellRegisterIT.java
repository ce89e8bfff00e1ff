package org.standclear.cell;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.UUID;
import java.util.concurrent.CompletableFuture;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.dao.DataAccessException;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.standclear.cell.CellRegister.Decided;
import org.standclear.cell.CellRegister.NewProposal;
import org.standclear.cell.CellRegister.Proposed;
import org.standclear.platform.digest.Sha256;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.lab.Labs;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;
import org.standclear.trail.RecordedEntry;
import org.standclear.trail.TrailReader;

/** New versions need a next number, a reason and a second person, and never change again. */
class CellRegisterIT {

    abstract static class Cases {

        @Autowired
        CellRegister register;

        @Autowired
        Cells cells;

        @Autowired
        JdbcClient jdbc;

        @Autowired
        TrailReader reader;

        @Autowired
        Labs labs;

        private final PersonId technician = PersonId.next();
        private final PersonId instructor = PersonId.next();
        private String name = "";

        @BeforeEach
        void newName() {
            name = SampleCell.name();
        }

        @Test
        void aFileComesInForceWhenASecondPersonApproves() {
            UUID proposal = kept(null, SampleCell.file(name, 7));
            assertThat(cells.all()).extracting(Cell::name).doesNotContain(name);

            CellId cell = ((Decided.Done) register.approve(proposal, instructor, 0)).cell();

            CellVersion version = cells.current(cell);
            assertThat(version.file()).isEqualTo(SampleCell.file(name, 7));
            assertThat(version.sha256()).isEqualTo(Sha256.of(SampleCell.file(name, 7)));
            assertThat(version.fittedTool()).isEqualTo("G-02");
            assertThat(version.proposedBy()).isEqualTo(technician);
            assertThat(version.approvedBy()).isEqualTo(instructor);
            assertThat(cells.find(cell)).hasValueSatisfying(found -> {
                assertThat(found.currentVersion()).isEqualTo(7);
                assertThat(found.startOffsetMinutes()).isEqualTo(7);
                assertThat(found.state()).isEqualTo(CellState.IN_SERVICE);
            });
            assertThat(reader.about(labs.theLab().id(), proposal.toString()))
                    .extracting(RecordedEntry::kind)
                    .containsExactlyInAnyOrder("cell.proposed", "cell.version-approved");
        }

        @Test
        void refusesTheProposerAsApprover() {
            UUID proposal = kept(null, SampleCell.file(name, 1));

            assertThat(register.approve(proposal, technician, 0)).isInstanceOf(Decided.Refused.class);
            assertThat(register.find(proposal)).get().matches(CellProposal::open);
            assertThatThrownBy(() -> jdbc.sql("update cell_proposals set state = 'APPROVED', decided_by = proposed_by, "
                                    + "decided_at = proposed_at where id = :id")
                            .param("id", proposal)
                            .update())
                    .isInstanceOf(DataAccessException.class);
        }

        @Test
        void refusesTheWrongNumberNameOrReason() {
            CellId cell = SampleCell.inForce(register, name);

            assertThat(refused(cell, SampleCell.file(name, 7)).says()).contains("has to be 8");
            assertThat(refused(cell, SampleCell.file(name, 9)).says()).contains("has to be 8");
            assertThat(refused(cell, SampleCell.file("Dunlin", 8)).says()).contains("has to be " + name);
            assertThat(refused(null, SampleCell.file(name, 1)).says()).contains("already");
            assertThat(refused(cell, "cell-file: [").field()).isEqualTo("file");
            assertThat(register.propose(new NewProposal(cell, SampleCell.file(name, 8), " ", technician, 0)))
                    .isInstanceOfSatisfying(
                            Proposed.Refused.class,
                            refused -> assertThat(refused.field()).isEqualTo("reason"));
        }

        @Test
        void anApprovalThatCameTooLateIsStale() {
            CellId cell = SampleCell.inForce(register, name);
            UUID slower = kept(cell, SampleCell.file(name, 8));
            UUID faster = kept(cell, SampleCell.file(name, 8));

            assertThat(register.approve(faster, instructor, 7)).isEqualTo(new Decided.Done(cell, 8));
            assertThat(register.approve(slower, instructor, 7)).isInstanceOf(Decided.Stale.class);
            assertThat(register.approve(faster, instructor, 8)).isInstanceOf(Decided.Stale.class);
            assertThat(cells.versions(cell)).extracting(CellVersion::number).containsExactly(8, 7);
        }

        @Test
        void twoApprovalsAtTheSameTimeEndAsOneVersion() {
            CellId cell = SampleCell.inForce(register, name);
            List<UUID> proposals = List.of(kept(cell, SampleCell.file(name, 8)), kept(cell, SampleCell.file(name, 8)));
            List<CompletableFuture<Decided>> both = proposals.stream()
                    .map(one -> CompletableFuture.supplyAsync(() -> register.approve(one, instructor, 7)))
                    .toList();

            List<Decided> answers = both.stream().map(CompletableFuture::join).toList();

            assertThat(answers).hasAtLeastOneElementOfType(Decided.Done.class);
            assertThat(answers).hasAtLeastOneElementOfType(Decided.Stale.class);
            assertThat(cells.current(cell).number()).isEqualTo(8);
        }

        @Test
        void aProposalThatIsPutAsideCannotBeApproved() {
            UUID proposal = kept(null, SampleCell.file(name, 1));

            assertThat(register.reject(proposal, technician, "wrong post")).isInstanceOf(Decided.PutAside.class);
            assertThat(register.approve(proposal, instructor, 0)).isInstanceOf(Decided.Stale.class);
            assertThat(register.find(proposal).orElseThrow().decision())
                    .extracting(CellProposal.Decision::reason)
                    .isEqualTo("wrong post");
        }

        @Test
        void theDatabaseRefusesToChangeAVersion() {
            CellId cell = SampleCell.inForce(register, name);

            assertThatThrownBy(() -> jdbc.sql("update cell_versions set file = 'x' where cell_id = :id")
                            .param("id", cell.value())
                            .update())
                    .isInstanceOf(DataAccessException.class)
                    .hasMessageContaining("never changed");
            assertThatThrownBy(() -> jdbc.sql("delete from cell_versions where cell_id = :id")
                            .param("id", cell.value())
                            .update())
                    .isInstanceOf(DataAccessException.class);
        }

        private UUID kept(@Nullable CellId cell, String file) {
            return ((Proposed.Kept) register.propose(new NewProposal(cell, file, "measured again", technician, 7)))
                    .proposal()
                    .id();
        }

        private Proposed.Refused refused(@Nullable CellId cell, String file) {
            return (Proposed.Refused) register.propose(new NewProposal(cell, file, "measured again", technician, 7));
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
