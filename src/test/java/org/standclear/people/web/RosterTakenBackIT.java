package org.standclear.people.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;

import java.util.Objects;
import java.util.Set;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.mock.web.MockHttpServletResponse;
import org.standclear.booking.SampleLab;
import org.standclear.message.Messages;
import org.standclear.people.Enrolment;
import org.standclear.people.PeopleRegister;
import org.standclear.people.Person;
import org.standclear.platform.ids.CourseId;
import org.standclear.platform.security.Role;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;

/** Applying does what the page showed and nothing else, and taking back leaves what people built on it. */
class RosterTakenBackIT {

    abstract static class Cases extends RosterCases {

        private static final String HEADER = "login,name,course,section\n";

        @Autowired
        PeopleRegister accounts;

        @Autowired
        Messages messages;

        private Person known(String login) {
            return everybody.byLogin(login + own).orElseThrow();
        }

        @Test
        void leavesAnAccountOpenThatBecameStaff() {
            Person marit = person(Role.ADMINISTRATOR);
            String preview = location(
                    sendFile(HEADER + line("tal", "Tal Emberley", "01") + line("wren", "Wren Saltmarsh", "01")));
            location(apply(preview));
            accounts.setRoles(known("tal").id(), Set.of(Role.TECHNICIAN), 1, marit.id());
            assertThat(page(get(preview), ines()).text()).contains("Tal Emberley: more than a student");

            location(act(preview + "/undo"));

            assertThat(known("tal").active()).as("a technician").isTrue();
            assertThat(known("wren").active()).isFalse();
        }

        @Test
        void leavesAnAccountOpenThatHasABookingAheadAndSaysSo() {
            String preview = location(
                    sendFile(HEADER + line("tal", "Tal Emberley", "01") + line("wren", "Wren Saltmarsh", "01")));
            location(apply(preview));
            SampleLab lab = new SampleLab(application);
            lab.authorise(known("wren").id());
            lab.booked(lab.cell(0), "2026-03-12T09:00:00Z", known("wren"), null);
            assertThat(page(get(preview), ines()).text())
                    .contains("Wren Saltmarsh: has a booking ahead and stays a student of this lab")
                    .doesNotContain("Tal Emberley: has a booking");

            location(act(preview + "/undo"));

            assertThat(known("wren").active())
                    .as("whoever booked can still come")
                    .isTrue();
            assertThat(known("wren").roles()).containsExactly(Role.STUDENT);
            assertThat(courses.enrolmentsOf(known("wren").id())).isEmpty();
            assertThat(known("tal").active()).isFalse();
        }

        @Test
        void leavesAnAccountOpenThatIsInAnotherSectionByNow() {
            String preview = location(sendFile(HEADER + line("wren", "Wren Saltmarsh", "01")));
            location(apply(preview));
            done(register.enrol(known("wren").id(), Objects.requireNonNull(second), null));

            location(act(preview + "/undo"));

            assertThat(known("wren").active()).isTrue();
            assertThat(courses.enrolmentsOf(known("wren").id()))
                    .extracting(Enrolment::sectionCode)
                    .containsExactly("02");
        }

        @Test
        void takesNobodyOutOfACourseWhoseCodeBeginsAlike() {
            Person kofi = new SampleLab(application).student("Kofi Marblewood");
            CourseId longer = done(register.addCourse(course + "-1", "More robots", null));
            done(register.enrol(kofi.id(), done(register.addSection(longer, "B", null)), null));

            String preview = location(sendFile(HEADER + line("noor", "Noor Candlewick", "01")));
            assertThat(page(get(preview), ines()).select("h1").text()).endsWith("0 not in the file");
            location(apply(preview, "takeOut", "true"));

            assertThat(courses.enrolmentsOf(kofi.id())).hasSize(1);
        }

        @Test
        void refusesToApplyWhatThePageDidNotShow() {
            Person kofi = new SampleLab(application).student("Kofi Marblewood");
            String preview = location(sendFile(HEADER + line("noor", "Noor Candlewick", "01")));
            String seen = page(get(preview), ines()).select("input[name=seen]").val();
            done(register.enrol(kofi.id(), Objects.requireNonNull(first), null));

            MockHttpServletResponse answer = act(preview + "/apply", "takeOut", "true", "seen", seen);

            assertThat(answer.getStatus()).isEqualTo(422);
            assertThat(document(answer).select("[role=alert]").text()).contains("not what the page showed");
            assertThat(courses.enrolmentsOf(kofi.id())).hasSize(1);
            assertThat(everybody.byLogin("noor" + own)).isEmpty();
            assertThat(location(apply(preview, "takeOut", "true"))).isEqualTo(preview);
            assertThat(courses.enrolmentsOf(kofi.id())).isEmpty();
        }

        @Test
        void usesTheAddressWhereNoneIsKnownAndNeverOverwritesOne() {
            Person kofi = new SampleLab(application).student("Kofi Marblewood");
            messages.wish(kofi.id(), Messages.Wishes.plain("kofi@home.example"));
            String file = "login,name,course,section,email\n" + kofi.login() + ",Kofi Marblewood," + course
                    + ",01,kofi@quillhaven.example\n"
                    + "noor" + own + ",Noor Candlewick," + course + ",01,noor@quillhaven.example\n"
                    + "odd" + own + ",Osric Plum," + course + ",01,not an address\n";
            String preview = location(sendFile(file));
            assertThat(page(get(preview), ines()).text())
                    .contains("E-mail addresses: 1 person who has none yet gets")
                    .contains("Osric Plum cannot be written to");

            location(apply(preview));
            assertThat(address(kofi)).isEqualTo("kofi@home.example");
            assertThat(address(known("noor"))).isEqualTo("noor@quillhaven.example");
            assertThat(messages.wishesOf(known("odd").id())).isEmpty();

            location(act(preview + "/undo"));
            assertThat(messages.wishesOf(known("noor").id())).isEmpty();
            assertThat(address(kofi)).isEqualTo("kofi@home.example");
        }

        @Test
        void givesNoAddressToStaffAndNamesWhoGetsOne() {
            SampleLab lab = new SampleLab(application);
            Person adaeze = lab.technician("Adaeze Lanternby");
            Person yuki = lab.student("Yuki Halfmoon");
            String file = "login,name,course,section,email\n" + adaeze.login() + ",Adaeze Lanternby," + course
                    + ",01,adaeze@attacker.example\n" + yuki.login() + ",Yuki Halfmoon," + course
                    + ",01,yuki@quillhaven.example\n";
            String preview = location(sendFile(file));
            assertThat(page(get(preview), ines()).text())
                    .contains("Of these have an account already: Yuki Halfmoon.")
                    .contains("the e-mail address of Adaeze Lanternby is left out");

            location(apply(preview));

            assertThat(messages.wishesOf(adaeze.id())).isEmpty();
            assertThat(address(yuki)).isEqualTo("yuki@quillhaven.example");
        }

        private String address(Person person) {
            return messages.wishesOf(person.id()).orElseThrow().address();
        }

        @Test
        void keepsTheAddressOfWhoeverChangedTheirWishesSince() {
            String preview = location(sendFile("login,name,course,section,email\n" + "noor" + own + ",Noor Candlewick,"
                    + course + ",01,noor@quillhaven.example\n"));
            location(apply(preview));
            Messages.Wishes kept = Messages.Wishes.plain("noor@quillhaven.example");
            messages.wish(
                    known("noor").id(),
                    new Messages.Wishes(kept.address(), true, kept.quietFrom().minusHours(1), kept.quietUntil()));

            location(act(preview + "/undo"));

            assertThat(messages.wishesOf(known("noor").id())).isPresent();
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
