package org.standclear.cell.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.multipart;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;

import java.util.UUID;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.mock.web.MockHttpServletResponse;
import org.springframework.mock.web.MockMultipartFile;
import org.standclear.cell.CellProposal;
import org.standclear.cell.CellRegister;
import org.standclear.cell.Cells;
import org.standclear.cell.SampleCell;
import org.standclear.people.Person;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.security.Role;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;
import org.standclear.testing.web.PageCases;

/** One person proposes a version of a cell with a reason, another approves what the page showed. */
class ProposalPagesIT {

    abstract static class Cases extends PageCases {

        @Autowired
        CellRegister register;

        @Autowired
        Cells cells;

        private String name = "";
        private CellId cell = CellId.next();

        @BeforeEach
        void aCell() {
            name = SampleCell.name();
            cell = SampleCell.inForce(register, name);
        }

        @Test
        void aVersionIsProposedByOneAndApprovedByAnother() throws Exception {
            Person technician = person(Role.TECHNICIAN);
            Person instructor = person(Role.INSTRUCTOR);
            String slower = SampleCell.file(name, 8).replace("tool-speed-mm-s: 250", "tool-speed-mm-s: 200");
            String proposal = location(propose(slower, technician));

            Document shown = page(get(proposal), instructor);
            assertThat(shown.select("section[aria-labelledby=difference] tbody tr"))
                    .singleElement()
                    .satisfies(row -> assertThat(row.text()).isEqualTo("Tool speed 250 mm/s 200 mm/s"));
            MockHttpServletResponse own = approve(proposal, "7", person(Role.INSTRUCTOR));
            assertThat(own.getStatus()).isEqualTo(302);

            assertThat(cells.current(cell).number()).isEqualTo(8);
            assertThat(page(get("/cells/" + cell), instructor).text())
                    .contains("Version 8")
                    .contains(technician.printedName());
        }

        @Test
        void theProposerCannotApproveAndALateApprovalShowsBoth() throws Exception {
            Person instructor = person(Role.INSTRUCTOR);
            String mine = location(propose(SampleCell.file(name, 8), instructor));

            MockHttpServletResponse own = approve(mine, "7", instructor);
            assertThat(own.getStatus()).isEqualTo(422);
            assertThat(own.getContentAsString()).contains("another person approves");

            String faster = location(propose(
                    SampleCell.file(name, 8).replace("override-percent: 50", "override-percent: 40"),
                    person(Role.TECHNICIAN)));
            assertThat(approve(faster, "7", instructor).getStatus()).isEqualTo(302);
            MockHttpServletResponse late = approve(mine, "7", person(Role.REVIEWER));
            assertThat(late.getStatus()).isEqualTo(409);
            assertThat(document(late).text()).contains("Override").contains("40 %");
        }

        @Test
        void aCellFileThatCannotBeReadComesBackWithItsLine() throws Exception {
            Person technician = person(Role.TECHNICIAN);
            String broken = SampleCell.file(name, 8).replace("payload-kg: 1.0", "payload-kg: .nan");

            MockHttpServletResponse refused = propose(broken, technician);

            Document form = document(refused);
            assertThat(refused.getStatus()).isEqualTo(422);
            assertThat(form.select(".errors").text()).containsIgnoringCase("line 27");
            assertThat(form.select("textarea[name=file]").val()).isEqualTo(broken.strip());
            assertThat(register.proposals(cell)).noneMatch(CellProposal::open);
        }

        private MockHttpServletResponse propose(String file, Person by) throws Exception {
            return send(
                    multipart("/cells/" + cell + "/propose")
                            .file(new MockMultipartFile("upload", "", "application/octet-stream", new byte[0]))
                            .param("formToken", UUID.randomUUID().toString())
                            .param("reason", "measured again")
                            .param("file", file),
                    by);
        }

        private MockHttpServletResponse approve(String proposal, String seen, Person by) throws Exception {
            return send(
                    post(proposal + "/approve")
                            .param("formToken", UUID.randomUUID().toString())
                            .param("seenVersion", seen),
                    by);
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
