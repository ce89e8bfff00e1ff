package org.standclear.people.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;

import java.util.Objects;
import java.util.Set;
import java.util.UUID;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.standclear.booking.SampleLab;
import org.standclear.booking.SecondLab;
import org.standclear.booking.labs.LabRegister;
import org.standclear.message.Messages;
import org.standclear.people.PeopleRegister;
import org.standclear.people.Person;
import org.standclear.platform.ids.LabId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.security.Role;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;

/** A roster that names people of another lab: it says of them what the file says, and lets them out as it let them in. */
class RosterAcrossLabsIT {

    abstract static class Cases extends RosterCases {

        private static final String HEADER = "login,name,course,section,email\n";

        @Autowired
        Messages messages;

        @Autowired
        LabRegister labs;

        @Autowired
        PeopleRegister accounts;

        private SecondLab other;
        private Person far;

        @BeforeEach
        void somebodyOfAnotherLab() {
            other = new SecondLab(application, "America/Halifax");
            far = other.in(() -> other.sample().person("Ottilie Realname", Role.STUDENT));
        }

        private String row(String name, String address) {
            return far.login() + "," + name + "," + course + ",01," + address + "\n";
        }

        private Set<Role> rolesHere() {
            return everybody.find(far.id()).orElseThrow().roles();
        }

        private String applied() {
            String preview = location(sendFile(HEADER + row("Otty Filename", "")));
            location(apply(preview));
            return preview;
        }

        @Test
        void thePreviewShowsTheNameOfTheFileAndNotThatOfTheAccount() {
            String preview = location(sendFile(HEADER + row("Otty Filename", "")));

            Document shown = page(get(preview), ines());

            assertThat(shown.text())
                    .contains("Otty Filename: " + course + "-01")
                    .contains("has an account of another lab")
                    .doesNotContain("Realname");
        }

        @Test
        void thePreviewDoesNotSayThatAnAccountElsewhereIsClosed() {
            other.in(() -> accounts.deactivate(
                    far.id(), "left", other.person(Role.INSTRUCTOR).id()));

            Document shown = page(get(location(sendFile(HEADER + row("Otty Filename", "")))), ines());

            assertThat(shown.text()).doesNotContain("closed").doesNotContain("Realname");
        }

        @Test
        void whereMessagesOfSomebodyElsewhereGoIsNotForTheFile() {
            String preview = location(sendFile(HEADER + row("Otty Filename", "elsewhere@attacker.example")));
            assertThat(page(get(preview), ines()).text()).doesNotContain("E-mail addresses");

            location(apply(preview));

            assertThat(messages.wishesOf(far.id())).isEmpty();
        }

        @Test
        void takingTheRosterBackTakesTheRoleBackThatItGave() {
            assertThat(rolesHere()).isEmpty();
            String preview = applied();
            assertThat(rolesHere()).containsExactly(Role.STUDENT);

            location(act(preview + "/undo"));

            assertThat(rolesHere()).isEmpty();
            Person there = other.in(() -> everybody.find(far.id()).orElseThrow());
            assertThat(there.roles()).containsExactly(Role.STUDENT);
            assertThat(there.active()).isTrue();
        }

        @Test
        void aRoleThatWasThereBeforeStays() {
            labs.appoint(homeLab(), far.login(), Set.of(Role.STUDENT), PersonId.next());
            String preview = applied();

            location(act(preview + "/undo"));

            assertThat(rolesHere()).containsExactly(Role.STUDENT);
        }

        @Test
        void whoWasEnrolledOtherwiseSinceStaysAStudent() {
            String preview = applied();
            done(register.enrol(far.id(), Objects.requireNonNull(second), null));

            location(act(preview + "/undo"));

            assertThat(rolesHere()).containsExactly(Role.STUDENT);
        }

        @Test
        void whoHasABookingAheadStaysAStudentAndThePageSaysSo() {
            String preview = applied();
            var here = new SampleLab(application);
            here.authorise(far.id());
            here.booked(here.cell(0), "2026-03-12T09:00:00Z", far, null);
            assertThat(page(get(preview), ines()).text()).contains("has a booking ahead and stays a student");

            location(act(preview + "/undo"));

            assertThat(rolesHere()).containsExactly(Role.STUDENT);
        }

        @Test
        void whatTheyHaveAheadInAnotherLabIsNotSeenHere() {
            String preview = applied();
            other.in(() -> {
                other.sample().authorise(far.id());
                return other.sample().booked(other.cell(), "2026-03-12T14:00:00Z", far, null);
            });
            assertThat(page(get(preview), ines()).text()).doesNotContain("has a booking ahead");

            location(act(preview + "/undo"));

            assertThat(rolesHere()).isEmpty();
        }

        @Test
        void anAccountThatAnotherLabTookInSinceStaysOpenAndLeavesThisOne() {
            String file = HEADER + "new" + own + ",Piers Lanternrock," + course + ",01,\n";
            String preview = location(sendFile(file));
            location(apply(preview));
            Person piers = everybody.byLogin("new" + own).orElseThrow();
            labs.appoint(other.id(), piers.login(), Set.of(Role.STUDENT), PersonId.next());

            location(act(preview + "/undo"));

            Person now = everybody.find(piers.id()).orElseThrow();
            assertThat(now.active()).isTrue();
            assertThat(now.roles()).as("in this lab").isEmpty();
            assertThat(other.in(() -> everybody.find(piers.id()).orElseThrow().roles()))
                    .containsExactly(Role.STUDENT);
        }

        private LabId homeLab() {
            return new LabId(jdbc.sql("select lab_id from courses where id = :id")
                    .param("id", Objects.requireNonNull(courseId).value())
                    .query(UUID.class)
                    .single());
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
