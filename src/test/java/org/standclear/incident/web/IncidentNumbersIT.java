package org.standclear.incident.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Duration;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.mock.web.MockHttpServletResponse;
import org.springframework.transaction.support.TransactionTemplate;
import org.springframework.ui.ExtendedModelMap;
import org.standclear.incident.ControlLevel;
import org.standclear.incident.CorrectiveAction;
import org.standclear.incident.Incident;
import org.standclear.incident.IncidentClass;
import org.standclear.incident.IncidentNumbers;
import org.standclear.incident.IncidentSettings;
import org.standclear.people.Person;
import org.standclear.platform.ids.IncidentId;
import org.standclear.platform.security.SignedInPerson;
import org.standclear.platform.web.NotFoundException;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;

/** When forms are due and effects are looked at: numbers that an instructor changes with a reason, from then on. */
class IncidentNumbersIT {

    private static final String ADDRESS = "/incident-numbers";

    abstract static class Cases extends IncidentPageCases {

        @Autowired
        IncidentNumbers numbers;

        @Autowired
        IncidentNumbersPages pages;

        @AfterEach
        void theProgramsOwnNumbers() {
            if (!numbers.inForce().equals(IncidentSettings.DEFAULTS)) {
                numbers.change(IncidentSettings.DEFAULTS, ines.id(), "end of the test");
            }
        }

        private MockHttpServletResponse change(String contact, String injury, String effect, String reason)
                throws Exception {
            Map<String, String> fields = new HashMap<>();
            fields.put("seen", see(ines, ADDRESS).select("input[name=seen]").val());
            fields.put("contactFormHours", contact);
            fields.put("injuryFormHours", injury);
            fields.put("effectCheckDays", effect);
            fields.put("reason", reason);
            return submit(ines, ADDRESS, fields);
        }

        @Test
        void holdForWhatIsReportedAndDoneFromThenOn() throws Exception {
            IncidentId before = reported(IncidentClass.CONTACT);
            assertThat(led(change("2", "12", "14", "the safety office asks for it")))
                    .isEqualTo(ADDRESS);
            Incident after = now(reported(IncidentClass.CONTACT));
            Incident injury = now(reported(IncidentClass.FIRST_AID));

            assertThat(now(before).formDueAt())
                    .isEqualTo(now(before).happenedAt().plus(Duration.ofHours(4)));
            assertThat(after.formDueAt()).isEqualTo(after.happenedAt().plus(Duration.ofHours(2)));
            assertThat(injury.formDueAt()).isEqualTo(injury.happenedAt().plus(Duration.ofHours(12)));

            reviewed(after.id(), ControlLevel.ENGINEERING);
            assertThat(see(ines, at(after.id()) + "/review").text()).contains("looked at 14 days after");
            CorrectiveAction action = actions.of(after.id()).get(0);
            done(actions.done(action.id(), "It is on.", action.owner()));
            assertThat(Objects.requireNonNull(
                                    actions.find(action.id()).orElseThrow().done())
                            .checkDueOn())
                    .isEqualTo(today().plusDays(14));

            Document page = see(ines, ADDRESS);
            assertThat(page.text()).contains("the safety office asks for it", "Form of an injury 12 h");
            assertThat(page.select("input[name=effectCheckDays]").val()).isEqualTo("14");
        }

        @ParameterizedTest
        @CsvSource({
            "0, 24, 30, contactFormHours",
            "25, 24, 30, contactFormHours",
            "4, 73, 30, injuryFormHours",
            "4, 24, 6, effectCheckDays",
            "4, 24, 366, effectCheckDays",
            "NaN, 24, 30, contactFormHours"
        })
        void refusesWhatIsNoSuchNumber(String contact, String injury, String effect, String field) throws Exception {
            MockHttpServletResponse answer = change(contact, injury, effect, "why");
            assertThat(answer.getStatus()).isEqualTo(422);
            Document page = page(answer);
            assertThat(page.select("#" + field + "-error").text()).contains("whole number");
            assertThat(page.select("input[name=reason]").val()).isEqualTo("why");
            assertThat(numbers.inForce()).isEqualTo(IncidentSettings.DEFAULTS);
        }

        @Test
        void takeTheWidestAndTheNarrowest() throws Exception {
            led(change("1", "1", "7", "the narrowest"));
            led(change("24", "72", "365", "the widest"));
            assertThat(numbers.inForce()).isEqualTo(new IncidentSettings(24, 72, 365));
            assertThat(numbers.changes(2))
                    .extracting(IncidentNumbers.Change::reason)
                    .isEqualTo(List.of("the widest", "the narrowest"));
        }

        @Test
        void needAReasonAndAnInstructorAndWhatWasSeen() throws Exception {
            assertThat(page(change("2", "12", "14", " ")).select("#reason-error"))
                    .hasSize(1);
            Document read = see(scene().adaeze, ADDRESS);
            assertThat(read.select("form[action=" + ADDRESS + "]")).isEmpty();
            assertThat(read.text()).contains("30 days after");
            Map<String, String> stale = Map.of(
                    "seen",
                    "9 9 9",
                    "contactFormHours",
                    "2",
                    "injuryFormHours",
                    "12",
                    "effectCheckDays",
                    "14",
                    "reason",
                    "r");
            assertThat(submit(scene().adaeze, ADDRESS, stale).getStatus()).isEqualTo(403);
            assertThat(submit(ines, ADDRESS, stale).getStatus()).isEqualTo(409);
            assertThat(page(change("4", "24", "30", "r")).select(".errors").text())
                    .contains("hold already");
            assertThat(numbers.inForce()).isEqualTo(IncidentSettings.DEFAULTS);
        }

        /** The second waits for the first and is shown both, as one whose form is old. */
        @Test
        void tellTheSecondOfTwoAtTheSameMoment() throws Exception {
            Map<String, String> second = new HashMap<>(Map.of(
                    "contactFormHours", "3", "injuryFormHours", "12", "effectCheckDays", "14", "reason", "second"));
            second.put("seen", see(ines, ADDRESS).select("input[name=seen]").val());
            ExecutorService other = Executors.newSingleThreadExecutor();
            try {
                Future<MockHttpServletResponse> answer =
                        Objects.requireNonNull(new TransactionTemplate(transactions).execute(status -> {
                            numbers.change(new IncidentSettings(2, 12, 14), ines.id(), "first");
                            var sent = other.submit(() -> submit(ines, ADDRESS, second));
                            assertThatThrownBy(() -> sent.get(400, TimeUnit.MILLISECONDS))
                                    .as("it waits")
                                    .isInstanceOf(TimeoutException.class);
                            return sent;
                        }));
                assertThat(answer.get(20, TimeUnit.SECONDS).getStatus()).isEqualTo(409);
            } finally {
                other.shutdownNow();
            }
            assertThat(numbers.inForce()).isEqualTo(new IncidentSettings(2, 12, 14));
        }

        /** Beside the rule of the route. */
        @Test
        void areNotChangedByWhoMayOnlyReadThem() {
            Person who = scene().adaeze;
            var me = new SignedInPerson(who.id(), who.login(), who.printedName(), who.roles(), null);
            assertThatThrownBy(() -> pages.change(Map.of(), me, new MockHttpServletResponse(), new ExtendedModelMap()))
                    .isInstanceOf(NotFoundException.class);
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
