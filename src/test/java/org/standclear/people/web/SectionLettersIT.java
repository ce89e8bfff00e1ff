package org.standclear.people.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.standclear.booking.SampleLab;
import org.standclear.message.SentMail;
import org.standclear.message.SentMail.Received;
import org.standclear.people.Enrolment;
import org.standclear.people.Person;
import org.standclear.platform.ids.SectionId;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;

/**
 * What somebody with a booking ahead is told by e-mail when a roster changes their sections: one letter for one act, which
 * names all that changed and nothing that did not.
 */
class SectionLettersIT {

    abstract static class Cases extends RosterCases {

        private static final String HEADER = "login,name,course,section\n";

        private @Nullable SampleLab lab;
        private @Nullable Person kofi;
        private @Nullable SentMail mail;

        @BeforeEach
        void somebodyWithABooking() {
            SampleLab made = new SampleLab(application);
            lab = made;
            kofi = made.student("Kofi Marblewood");
            mail = new SentMail(application);
            made.booked(made.cell(7), "2026-03-12T12:07:00Z", kofi(), null);
        }

        private Person kofi() {
            return Objects.requireNonNull(kofi);
        }

        private void enrol(@Nullable SectionId section) {
            done(register.enrol(kofi().id(), Objects.requireNonNull(section), null));
        }

        private List<Received> letters() {
            return Objects.requireNonNull(mail).to(kofi().id());
        }

        private Received theLetter() {
            List<Received> letters = letters();
            assertThat(letters).hasSize(1);
            return letters.get(0);
        }

        private String rowOf(Person person, String section) {
            return person.login() + "," + person.printedName() + "," + course + "," + section + "\n";
        }

        private String others() {
            return HEADER + line("noor", "Noor Candlewick", "01");
        }

        private String applied(String file) {
            String preview = location(sendFile(file));
            location(apply(preview, "takeOut", "true"));
            return preview;
        }

        @Test
        void namesEverySectionThatSomebodyLeft() {
            enrol(first);
            enrol(second);

            applied(others());

            Received letter = theLetter();
            assertThat(letter.subject()).isEqualTo("You are not in " + course + "-01 and " + course + "-02 any more");
            assertThat(letter.text())
                    .contains("Your booking stays:")
                    .contains("Give up what you do not need. If the roster is wrong, tell your instructor.")
                    .anyMatch(line -> line.contains("12:07-12:37"));
            assertThat(letter.html()).contains("Your booking stays:");
        }

        @Test
        void tellsWhoMovedWhereTheyAreNow() {
            enrol(first);

            applied(HEADER + rowOf(kofi(), "02"));

            Received letter = theLetter();
            assertThat(letter.subject())
                    .isEqualTo("You are in " + course + "-02 now, not in " + course + "-01 any more");
            assertThat(letter.text())
                    .contains("Your booking stays:")
                    .contains("The due dates of " + course + "-02 are yours now.")
                    .contains("If the roster is wrong, tell your instructor.")
                    .noneMatch(line -> line.contains("Give up"));
        }

        @Test
        void tellsWhoStaysInAnotherSectionWhere() {
            enrol(first);
            enrol(second);

            applied(HEADER + rowOf(kofi(), "02"));

            assertThat(theLetter().subject())
                    .isEqualTo("You are not in " + course + "-01 any more; you stay in " + course + "-02");
        }

        @Test
        void tellsOfSeveralCoursesInOneLetter() {
            String other = course + "X";
            SectionId there = done(register.addSection(done(register.addCourse(other, "Grippers", null)), "07", null));
            enrol(first);
            enrol(there);

            applied(HEADER + rowOf(kofi(), "02") + "wren" + own + ",Wren Saltmarsh," + other + ",07\n");

            Received letter = theLetter();
            assertThat(letter.subject()).isEqualTo("Your sections have changed");
            assertThat(letter.text())
                    .startsWith(
                            "You are in " + course + "-02 now, not in " + course + "-01 any more.",
                            "You are not in " + other + "-07 any more.",
                            "Your booking stays:");
        }

        @Test
        void takingItBackTellsOfBothSections() {
            enrol(first);
            String roster = applied(HEADER + rowOf(kofi(), "02"));
            assertThat(letters()).hasSize(1);

            location(act(roster + "/undo"));

            Received letter = theLetter();
            assertThat(letter.subject())
                    .isEqualTo("You are in " + course + "-01 again, not in " + course + "-02 any more");
            assertThat(letter.text())
                    .contains("The roster that had left you out was taken back. Your bookings are as they were.");
        }

        @Test
        void takingItBackDoesNotTellOfAReturnThatWasNone() {
            enrol(first);
            enrol(second);
            String roster = applied(others());
            assertThat(letters()).hasSize(1);
            enrol(first);

            location(act(roster + "/undo"));

            assertThat(theLetter().subject()).isEqualTo("You are in " + course + "-02 again");
            assertThat(courses.enrolmentsOf(kofi().id()))
                    .extracting(Enrolment::sectionCode)
                    .containsExactlyInAnyOrder("01", "02");
            assertThat(pastTimesIn(first)).as("what was before stays past").isEqualTo(1);
            assertThat(pastTimesIn(second)).isZero();
        }

        @Test
        void takingItBackTellsNobodyWhoIsBackAlready() {
            enrol(first);
            String roster = applied(others());
            assertThat(letters()).hasSize(1);
            enrol(first);

            location(act(roster + "/undo"));

            assertThat(letters()).isEmpty();
        }

        @Test
        void takingItBackTellsWhoIsOutByThat() {
            String roster = applied(HEADER + rowOf(kofi(), "02"));
            assertThat(letters()).as("left nothing").isEmpty();

            location(act(roster + "/undo"));

            Received letter = theLetter();
            assertThat(letter.subject()).isEqualTo("You are not in " + course + "-02 any more");
            assertThat(letter.text())
                    .contains("The roster that had put you in was taken back. Your bookings are as they were.");
        }

        private int pastTimesIn(@Nullable SectionId section) {
            return jdbc.sql("select count(*) from past_enrolments where person_id = :person and section_id = :section")
                    .param("person", kofi().id().value())
                    .param("section", Objects.requireNonNull(section).value())
                    .query(Integer.class)
                    .single();
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
