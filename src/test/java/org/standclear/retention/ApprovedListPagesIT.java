package org.standclear.retention;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;

import java.util.UUID;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.mock.web.MockHttpServletResponse;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.request.MockHttpServletRequestBuilder;
import org.standclear.people.Person;
import org.standclear.platform.retention.RecordKind;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;
import org.standclear.testing.web.Accounts;

/** The pages of an approved list: when it is carried out, whose things are on it, and stopping it. */
class ApprovedListPagesIT {

    abstract static class Cases extends RetentionCases {

        @Autowired
        MockMvc mvc;

        private MockHttpServletResponse send(MockHttpServletRequestBuilder request, Person by) throws Exception {
            return mvc.perform(request.with(csrf()).with(Accounts.as(by)))
                    .andReturn()
                    .getResponse();
        }

        private Document page(String address, Person by) throws Exception {
            MockHttpServletResponse answer = send(get(address), by);
            assertThat(answer.getStatus()).isEqualTo(200);
            return Jsoup.parse(answer.getContentAsString());
        }

        private UUID due() {
            UUID id = told(scene().noor, "a note");
            keepOnly(RecordKind.MESSAGES, KeepingTime.years(1));
            longAfter();
            return id;
        }

        @Test
        void saysBeforeTheApprovalWhenItWouldBeCarriedOut() throws Exception {
            due();
            String from = labTime.full(
                    clock.instant().atZone(labTime.zone()).plusDays(7).toInstant());
            assertThat(page("/retention/due", marit).text()).contains("waits 7 days");
            assertThat(page("/retention/due/confirm", marit).text()).contains("from " + from + " on");
            Document kind = page("/retention/kinds/MESSAGES", marit);
            assertThat(kind.text()).contains("Noor Candlewick (" + scene().noor.login() + ")");
        }

        @Test
        void showsWhoseThingsAreOnItAndIsStoppedWithAReason() throws Exception {
            UUID message = due();
            UUID list = approvedJustNow();
            String address = "/retention/lists/" + list;
            Document shown = page(address, ines);
            assertThat(shown.select("h1").text())
                    .contains("is carried out from "
                            + labTime.full(disposals.find(list).orElseThrow().carriedOutFrom()));
            assertThat(shown.text()).contains("Noor Candlewick (" + scene().noor.login() + ")", "Stop the list");

            assertThat(send(
                                    post(address + "/stop")
                                            .param(
                                                    "formToken",
                                                    UUID.randomUUID().toString()),
                                    marit)
                            .getStatus())
                    .isEqualTo(422);
            MockHttpServletResponse stopped = send(
                    post(address + "/stop")
                            .param("formToken", UUID.randomUUID().toString())
                            .param("reason", "A claim came in"),
                    marit);
            assertThat(stopped.getRedirectedUrl()).isEqualTo(address);
            Document after = page(address, marit);
            assertThat(after.select("h1").text()).endsWith("was stopped");
            assertThat(after.text())
                    .contains("A claim came in", "the list was stopped")
                    .doesNotContain("Stop the list");
            clock.moveTo(disposals.find(list).orElseThrow().carriedOutFrom());
            assertThat(disposals.carryOut(50)).isZero();
            assertThat(count("messages", "id", message)).isEqualTo(1);
        }
    }

    @Nested
    @OnH2
    @Keeping
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    @Keeping
    class OnPostgresEngine extends Cases {}
}
