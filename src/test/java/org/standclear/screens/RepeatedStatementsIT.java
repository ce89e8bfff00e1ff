package org.standclear.screens;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;

import java.util.Comparator;
import java.util.Map;
import org.assertj.core.api.SoftAssertions;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.springframework.test.web.servlet.MockMvc;
import org.standclear.people.People;
import org.standclear.people.Person;
import org.standclear.testing.DemoCollege;
import org.standclear.testing.DemoOnH2;
import org.standclear.testing.StatementCount;
import org.standclear.testing.web.Accounts;
import org.standclear.testing.web.SiteWalk;
import org.standclear.testing.web.WebUser;

/**
 * No page of the demo college asks one statement for each of its rows. What the application asks does not depend on the
 * engine, so one is enough.
 */
@DemoOnH2
class RepeatedStatementsIT {

    /** So often at most for the cells, kinds or parts of a page; lists of the college are longer. */
    private static final int OFTEN = 12;

    /** They ask for each of something else than the rows of a list. */
    private static final Map<String, String> BOUNDED = Map.ofEntries(
            Map.entry("/attendants", "a day of one cell, for a week"),
            Map.entry("/cells/{id}", "a person who signed one of the cell's latest papers"),
            Map.entry("/cells/{id}/features", "a booking ahead, no further than can be booked"),
            Map.entry("/cells/{id}/features/{id}/remove", "the same"),
            Map.entry("/cells/{id}/move-all", "a booking that would move, for which a place is looked for"),
            Map.entry("/desk", "a booking of today, whose gates are asked as for a release"),
            Map.entry("/exceptions", "a rule"),
            Map.entry("/exceptions/rules", "a rule"),
            Map.entry("/fairness", "a day of the weeks that were asked for"),
            Map.entry("/forecast/{id}", "a day until the due date"),
            Map.entry("/incidents/{id}", "a signature under the one run"),
            Map.entry("/incidents/{id}/review", "a signature under the one run"),
            Map.entry("/report/runs/{id}", "a signature under the one run"),
            Map.entry("/runs/{id}", "a signature under the one run"),
            Map.entry("/runs/{id}/evidence", "a signature under the one run"),
            Map.entry("/retention", "a kind of record"),
            Map.entry("/retention/due", "a kind of record"),
            Map.entry("/retention/due/confirm", "a kind of record"));

    @LocalServerPort
    int port;

    @Autowired
    MockMvc mvc;

    @Autowired
    People people;

    @ParameterizedTest
    @ValueSource(strings = {"STUDENT", "TECHNICIAN", "INSTRUCTOR", "REVIEWER", "ADMINISTRATOR"})
    void askNothingForEachRow(String role) throws Exception {
        String login = DemoCollege.logins(role).get(0);
        Person person = people.byLogin(login).orElseThrow();
        SiteWalk walk = SiteWalk.from("/", WebUser.atPort(port).signIn(login, DemoCollege.password()));
        SoftAssertions all = new SoftAssertions();
        int asking = 0;
        for (Map.Entry<String, String> page : walk.pages().entrySet()) {
            var asked =
                    StatementCount.each(() -> mvc.perform(get(page.getValue()).with(Accounts.as(person))))
                            .entrySet()
                            .stream()
                            .max(Comparator.comparing(Map.Entry::getValue));
            asking += asked.isPresent() ? 1 : 0;
            asked.filter(most -> !BOUNDED.containsKey(page.getKey()))
                    .ifPresent(most -> all.assertThat(most.getValue())
                            .as("how often %s asks %s", page.getKey(), most.getKey())
                            .isLessThanOrEqualTo(OFTEN));
        }
        all.assertAll();
        assertThat(asking).as("pages that ask anything").isPositive();
    }
}
