package org.standclear.check.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.multipart;

import java.nio.charset.StandardCharsets;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.context.ApplicationContext;
import org.springframework.mock.web.MockHttpServletResponse;
import org.springframework.mock.web.MockMultipartFile;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.request.MockMultipartHttpServletRequestBuilder;
import org.standclear.booking.SecondLab;
import org.standclear.booking.labs.LabRegister;
import org.standclear.cell.CellRegister;
import org.standclear.cell.SampleCell;
import org.standclear.people.PeopleRegister;
import org.standclear.people.Person;
import org.standclear.people.PersonalTokens;
import org.standclear.people.PersonalTokens.Created;
import org.standclear.platform.ids.LabId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.lab.LabScope;
import org.standclear.platform.lab.Labs;
import org.standclear.platform.security.Role;
import org.standclear.program.SampleProgram;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;
import org.standclear.testing.web.Accounts;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.ObjectMapper;

/** A call finds cells in every lab of its owner, and in no other. */
class CheckCallsInLabsIT {

    private static final ObjectMapper JSON = new ObjectMapper();

    abstract static class Cases {

        @Autowired
        MockMvc mvc;

        @Autowired
        ApplicationContext application;

        @Autowired
        PeopleRegister people;

        @Autowired
        PersonalTokens tokens;

        @Autowired
        CellRegister register;

        @Autowired
        LabRegister labRegister;

        @Autowired
        Labs labs;

        private LabId first;
        private LabId second;
        private Person noor;
        private String token;

        @BeforeEach
        void makeTwoLabs() {
            first = labs.theLab().id();
            second = SecondLab.empty(application, "America/Halifax");
            noor = Accounts.add(people, "Noor Candlewick", Role.STUDENT);
            token = ((Created.Kept) tokens.create(noor.id(), "homework", 7)).text();
        }

        private String cellIn(LabId lab, String name) {
            LabScope.run(lab, () -> SampleCell.inForce(register, name));
            return name;
        }

        private void letIn(Role role) {
            assertThat(labRegister.appoint(second, noor.login(), Set.of(role), PersonId.next()))
                    .isInstanceOf(LabRegister.Outcome.Done.class);
        }

        private MockHttpServletResponse call(String cell, @Nullable String lab) throws Exception {
            MockMultipartHttpServletRequestBuilder call = multipart("/api/checks")
                    .file(new MockMultipartFile(
                            "program",
                            "program.yaml",
                            "application/yaml",
                            SampleProgram.sheet("Peg").getBytes(StandardCharsets.UTF_8)));
            call.param("cell", cell).header("Authorization", "Bearer " + token);
            if (lab != null) {
                call.param("lab", lab);
            }
            return mvc.perform(call).andReturn().getResponse();
        }

        private static JsonNode problem(MockHttpServletResponse response, int status) throws Exception {
            assertThat(response.getStatus()).as(response.getContentAsString()).isEqualTo(status);
            assertThat(response.getContentType()).startsWith("application/problem+json");
            return JSON.readTree(response.getContentAsString());
        }

        @Test
        void findsACellOfTheOwnersSecondLab() throws Exception {
            String far = cellIn(second, SampleCell.name());
            problem(call(far, null), 404);

            letIn(Role.STUDENT);

            MockHttpServletResponse answer = call(far, null);
            assertThat(answer.getStatus()).isEqualTo(200);
            assertThat(JSON.readTree(answer.getContentAsString())
                            .at("/cell/name")
                            .asString())
                    .isEqualTo(far);
        }

        @Test
        void asksForTheLabWhereTwoHaveACellOfThatName() throws Exception {
            String name = SampleCell.name();
            cellIn(first, name);
            cellIn(second, name);
            assertThat(call(name, null).getStatus())
                    .as("the one that is the owner's")
                    .isEqualTo(200);
            letIn(Role.STUDENT);

            JsonNode problem = problem(call(name, null), 409);
            assertThat(problem.get("part").asString()).isEqualTo("lab");
            assertThat(problem.get("labs").size()).isEqualTo(2);
            assertThat(problem.get("detail").asString())
                    .contains(labs.find(second).orElseThrow().name());

            assertThat(call(name, labs.find(second).orElseThrow().name()).getStatus())
                    .isEqualTo(200);
            assertThat(call(name, first.toString()).getStatus()).isEqualTo(200);
        }

        @Test
        void aLabOfOthersIsNotThere() throws Exception {
            String name = cellIn(second, SampleCell.name());
            String ofOthers = labs.find(second).orElseThrow().name();

            JsonNode byName = problem(call(name, ofOthers), 404);
            assertThat(byName.get("detail").asString()).doesNotContain(ofOthers);
            assertThat(byName).isEqualTo(problem(call(name, "No such lab at all"), 404));
            problem(call(name, second.toString()), 404);
        }

        @Test
        void onlyLabsCountInWhichTheOwnerMayCheck() throws Exception {
            String far = cellIn(second, SampleCell.name());
            letIn(Role.REVIEWER);
            problem(call(far, null), 404);
        }

        @Test
        void aReviewerOfTheFirstLabMayCallForTheSecond() throws Exception {
            String far = cellIn(second, SampleCell.name());
            noor = Accounts.add(people, "Rosalind Oyelaran-Pike", Role.REVIEWER);
            token = ((Created.Kept) tokens.create(noor.id(), "homework", 7)).text();
            problem(call(far, null), 403);

            letIn(Role.STUDENT);

            assertThat(call(far, null).getStatus()).isEqualTo(200);
            assertThat(call(far, first.toString()).getStatus())
                    .as("no student there")
                    .isEqualTo(403);
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
