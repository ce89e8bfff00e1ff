package org.standclear.retention.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;

import java.util.Map;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.springframework.mock.web.MockHttpServletResponse;
import org.standclear.platform.security.Role;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;

/** What takes a second person or a few days: shorter times of keeping, and how long lists wait. */
class SecondLookPagesIT {

    abstract static class Cases extends RetentionPageCases {

        @Test
        void aShorterTimeWaitsForASecondPerson() {
            String rule = "/retention/rules/ROSTERS";
            String seen = page(get(rule), marit).select("input[name=seen]").val();
            Document asks = page(
                    get(rule + "/confirm")
                            .param("seen", seen)
                            .param("how", "time")
                            .param("amount", "30")
                            .param("unit", "days")
                            .param("reason", "Faculty decision 14"),
                    marit);
            assertThat(asks.text()).contains("a second person has to approve it");
            assertThat(asks.select("button").text()).contains("Propose this time");
            String proposal = location(submit(marit, rule, asks, hidden(asks)));
            assertThat(proposal).startsWith("/retention/shortenings/");
            assertThat(page(get(rule), marit).select("h1").text()).doesNotContain("30 days");
            assertThat(page(get("/retention"), ines).select("a[href=" + proposal + "]"))
                    .hasSize(1);

            Document own = page(get(proposal), marit);
            assertThat(own.text()).contains("You proposed it. A second person approves it.");
            assertThat(own.select("form[action$=/approve]")).isEmpty();
            Document second = page(get(proposal), ines);
            assertThat(submit(marit, proposal + "/approve", second, Map.of()).getStatus())
                    .isEqualTo(422);
            MockHttpServletResponse noReason = submit(ines, proposal + "/reject", second, Map.of("reason", " "));
            assertThat(noReason.getStatus()).isEqualTo(422);
            assertThat(document(noReason).select("#reason-error").text()).isNotEmpty();

            assertThat(location(submit(ines, proposal + "/approve", second, Map.of())))
                    .isEqualTo(proposal);
            assertThat(page(get(rule), marit).text()).contains("kept for 30 days", "approved by " + ines.printedName());
            assertThat(page(get(proposal), person(Role.REVIEWER)).text()).contains("was approved");
            // back again, alone: longer
            Document longer = page(
                    get(rule + "/confirm")
                            .param("seen", String.valueOf(Integer.parseInt(seen) + 1))
                            .param("how", "time")
                            .param("amount", String.valueOf(2 + Integer.parseInt(seen)))
                            .param("unit", "years")
                            .param("reason", "back"),
                    marit);
            assertThat(location(submit(marit, rule, longer, hidden(longer)))).isEqualTo(rule);
        }

        @Test
        void changesHowLongListsWaitAndSaysSo() {
            Document form = page(get("/retention/wait"), marit);
            Map<String, String> fields =
                    Map.of("seen", form.select("input[name=seen]").val(), "days", "21", "reason", "Summer break");
            assertThat(location(submit(marit, "/retention/wait", form, fields))).isEqualTo("/retention/wait");
            assertThat(page(get("/retention/wait"), marit).text()).contains("waits 21 days", "Summer break");
            assertThat(page(get("/retention"), ines).text()).contains("waits 21 days");
            Document old = page(get("/retention/wait"), marit);
            assertThat(submit(marit, "/retention/wait", old, fields).getStatus())
                    .as("a form from before")
                    .isEqualTo(409);
        }

        @ParameterizedTest
        @ValueSource(strings = {"0", "61", "-1", "1.5", "", "NaN", "99999"})
        void refusesDaysThatAreNone(String days) {
            Document form = page(get("/retention/wait"), marit);
            MockHttpServletResponse answer =
                    submit(marit, "/retention/wait", form, Map.of("seen", "0", "days", days, "reason", "why not"));
            assertThat(answer.getStatus()).isEqualTo(422);
            assertThat(document(answer).select("#days-error").text()).contains("from 1 to 60");
            assertThat(document(answer).select("#reason").val()).isEqualTo("why not");
        }

        @Test
        void namesWhatIsDueOfAKind() {
            Document kind = page(get("/retention/kinds/MESSAGES"), person(Role.REVIEWER));
            assertThat(kind.select("h1").text()).startsWith("Messages and their e-mails:");
            assertThat(page(get("/retention/kinds/MESSAGES?after=nonsense"), marit)
                            .select("h1"))
                    .hasSize(1);
            assertThat(send(get("/retention/kinds/NOTHING"), marit).getStatus()).isEqualTo(404);
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
