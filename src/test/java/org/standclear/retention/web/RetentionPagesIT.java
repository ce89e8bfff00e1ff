package org.standclear.retention.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;

import java.util.Map;
import java.util.UUID;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.mock.web.MockHttpServletResponse;
import org.springframework.test.web.servlet.request.MockHttpServletRequestBuilder;
import org.standclear.people.Person;
import org.standclear.platform.retention.Concern.About;
import org.standclear.platform.security.Role;
import org.standclear.retention.LegalHolds;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;

/** The pages of keeping and disposing, and the own record to take away. */
class RetentionPagesIT {

    abstract static class Cases extends RetentionPageCases {

        @Autowired
        LegalHolds holds;

        private MockHttpServletRequestBuilder confirm(String amount, String unit, String reason, String seen) {
            return get("/retention/rules/EXCUSES/confirm")
                    .param("seen", seen)
                    .param("how", "time")
                    .param("amount", amount)
                    .param("unit", unit)
                    .param("reason", reason);
        }

        @Test
        void saysWhatIsKeptAndWhereTheTimeComesFrom() {
            String text = page(get("/retention"), marit).text();
            assertThat(text)
                    .contains(
                            "29 CFR 1904.33(a)",
                            "29 CFR 1910.1020(d)(1)(i)",
                            "34 CFR 99.32(a)(2)",
                            "never changed or deleted",
                            "5 years after the end of the calendar year");
            assertThat(page(get("/retention"), ines).select("a[href^=/retention/rules]"))
                    .isEmpty();
        }

        @Test
        void changesATimeAfterAskingOnceMore() {
            Document form = page(get("/retention/rules/EXCUSES"), marit);
            String seen = form.select("input[name=seen]").val();
            int amount = 2 + Integer.parseInt(seen);
            Document asks = page(confirm(String.valueOf(amount), "years", "Faculty decision 12", seen), marit);
            assertThat(asks.text()).contains("cannot be brought back", "no record is due at once");
            Map<String, String> fields = hidden(asks);
            MockHttpServletResponse changed = submit(marit, "/retention/rules/EXCUSES", asks, fields);
            assertThat(location(changed)).isEqualTo("/retention/rules/EXCUSES");
            assertThat(page(get("/retention/rules/EXCUSES"), marit).text())
                    .contains("kept for " + amount + " years", "Faculty decision 12");
            // the same page, kept open by somebody else meanwhile
            Document other = page(confirm(String.valueOf(amount + 1), "years", "late", seen), marit);
            assertThat(submit(marit, "/retention/rules/EXCUSES", other, fields).getStatus())
                    .isEqualTo(409);
        }

        @ParameterizedTest
        @ValueSource(strings = {"0", "-1", "1.5", "", "101", "NaN", "999999999999"})
        void refusesATimeThatIsNone(String amount) {
            MockHttpServletResponse answer = send(confirm(amount, "years", "why not", "0"), marit);
            assertThat(answer.getStatus()).isEqualTo(422);
            Document page = document(answer);
            assertThat(page.select("#amount-error").text()).contains("whole number");
            assertThat(page.select("input[name=reason]").val()).isEqualTo("why not");
        }

        @Test
        void refusesAChangeWithoutReasonUnitOrDifference() {
            assertThat(send(confirm("1", "years", " ", "0"), marit).getStatus()).isEqualTo(422);
            assertThat(send(confirm("1", "fortnights", "x", "0"), marit).getStatus())
                    .isEqualTo(422);
            MockHttpServletResponse same = send(
                    get("/retention/rules/PHOTOS/confirm")
                            .param("how", "time")
                            .param("amount", "5")
                            .param("unit", "years")
                            .param("yearEnd", "true")
                            .param("reason", "x"),
                    marit);
            assertThat(same.getStatus()).isEqualTo(422);
            assertThat(document(same).text()).contains("holds already");
            Document form = page(get("/retention/rules/EXCUSES/confirm?how=good&reason=x&seen=0"), marit);
            assertThat(submit(marit, "/retention/rules/EXCUSES", form, Map.of("how", "time"))
                            .getStatus())
                    .isEqualTo(422);
        }

        @Test
        void placesAHoldThatTheRecordsPageShowsAndASecondPersonLifts() {
            Document form = page(get("/retention/holds/new?about=PERSON&named=" + noor.login()), ines);
            assertThat(form.select("#named").val()).isEqualTo(noor.login());
            Map<String, String> fields = Map.of(
                    "about", "PERSON", "named", noor.login(), "reason", "<b>claim</b>", "authority", "Legal office 7");
            assertThat(location(submit(ines, "/retention/holds", form, fields))).isEqualTo("/retention/holds");
            assertThat(page(get("/people/" + noor.id()), ines).text()).contains("On legal hold since");
            assertThat(page(get("/me/record"), noor).text()).doesNotContainIgnoringCase("legal hold");
            Document list = page(get("/retention/holds"), ines);
            assertThat(list.text()).contains("<b>claim</b>", "You placed this legal hold. A second person lifts it.");

            UUID hold = holds.standingOn(About.PERSON, noor.id().value()).get(0).id();
            String lift = "/retention/holds/" + hold + "/lift";
            assertThat(page(get(lift), ines).select("main form")).isEmpty();
            Document lifting = page(get(lift), marit);
            assertThat(submit(ines, lift, lifting, Map.of("reason", "mine")).getStatus())
                    .isEqualTo(422);
            assertThat(submit(marit, lift, lifting, Map.of("reason", "")).getStatus())
                    .isEqualTo(422);
            assertThat(location(submit(marit, lift, lifting, Map.of("reason", "settled"))))
                    .isEqualTo("/retention/holds");
            assertThat(send(get(lift), marit).getStatus()).isEqualTo(404);
            assertThat(page(get("/people/" + noor.id()), ines).text()).doesNotContain("On legal hold");
        }

        @Test
        void refusesAHoldOnNobody() {
            Document form = page(get("/retention/holds/new"), ines);
            MockHttpServletResponse nobody = submit(
                    ines,
                    "/retention/holds",
                    form,
                    Map.of("about", "PERSON", "named", "nobody-at-all", "reason", "r", "authority", "a"));
            assertThat(nobody.getStatus()).isEqualTo(422);
            assertThat(document(nobody).select("#named-error").text()).contains("sign-in name");
            assertThat(document(nobody).select("#authority").val()).isEqualTo("a");
            MockHttpServletResponse wrongDays = submit(
                    ines,
                    "/retention/holds",
                    form,
                    Map.of(
                            "about",
                            "KIND",
                            "kind",
                            "PHOTOS",
                            "from",
                            "2026-03-02",
                            "until",
                            "2026-03-01",
                            "reason",
                            "r",
                            "authority",
                            "a"));
            assertThat(document(wrongDays).select("#until-error").text()).contains("before the first");
        }

        @ParameterizedTest
        @ValueSource(
                strings = {
                    "/retention/rules/NOTHING",
                    "/retention/rules/NOTHING/confirm",
                    "/retention/lists/00000000-0000-7000-8000-000000000009",
                    "/retention/holds/00000000-0000-7000-8000-000000000009/lift"
                })
        void knowsNothingOfWhatIsNotThere(String address) {
            assertThat(send(get(address), marit).getStatus()).isEqualTo(404);
        }

        @Test
        void showsWhatIsDueToWhoDoesNotApprove() {
            for (Person reader : java.util.List.of(ines, person(Role.REVIEWER))) {
                Document due = page(get("/retention/due"), reader);
                assertThat(due.select("h1").text()).contains("due for disposal");
                assertThat(due.select("a[href=/retention/due/confirm]")).isEmpty();
                assertThat(send(get("/retention/due/confirm"), reader).getStatus())
                        .isEqualTo(403);
            }
        }

        @Test
        void refusesToApproveWhatItDidNotShow() {
            Document due = page(get("/retention/due"), marit);
            Document anyForm = page(get("/retention/holds/new"), marit);
            assertThat(due.select("h1").text()).contains("due for disposal");
            MockHttpServletResponse answer =
                    submit(marit, "/retention/due", anyForm, Map.of("fingerprint", "0".repeat(64)));
            assertThat(answer.getStatus()).isEqualTo(422);
        }

        @Test
        void writesTheLogAsCsv() throws Exception {
            MockHttpServletResponse csv = send(get("/retention/log.csv"), marit);
            assertThat(csv.getContentType()).startsWith("text/csv");
            assertThat(csv.getContentAsString().lines().findFirst().orElseThrow())
                    .startsWith("\uFEFFmonth,records,rule,disposed of");
            assertThat(page(get("/retention/log"), marit).select("h1").text()).isNotEmpty();
        }

        @Test
        void showsLooksToAdministratorReviewerAndThePersonThemselves() {
            page(get("/people/" + noor.id()), ines);
            page(get("/people/" + noor.id()), ines);
            Document log = page(get("/retention/access?whose=" + noor.login()), marit);
            assertThat(log.select("tbody tr")).hasSize(1);
            assertThat(log.text()).contains(ines.printedName(), "account, courses and authorisations");
            assertThat(page(get("/me/record"), noor).text())
                    .contains(ines.printedName() + ", account, courses and authorisations");
            assertThat(page(get("/me/record"), person(Role.STUDENT)).text())
                    .doesNotContain("account, courses and authorisations");
            assertThat(page(get("/retention/access?whose=nobody-at-all"), marit).text())
                    .contains("Nobody has that sign-in name.");
        }

        @Test
        void givesTheOwnRecordAway() throws Exception {
            page(get("/people/" + noor.id()), ines);
            MockHttpServletResponse json = send(get("/me/record.json"), noor);
            assertThat(json.getStatus()).isEqualTo(200);
            assertThat(json.getContentAsString()).contains("Who looked at your record", noor.printedName());
            MockHttpServletResponse csv = send(get("/me/record.csv"), noor);
            assertThat(csv.getContentAsString())
                    .startsWith("\uFEFFpart,at,words")
                    .contains("Who looked at your record")
                    .doesNotContain(marit.login());
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
