package org.standclear.story;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.security.crypto.password.PasswordEncoder;
import org.standclear.cell.CellState;
import org.standclear.cell.DayTests;
import org.standclear.cell.SampleCell;
import org.standclear.incident.ControlLevel;
import org.standclear.incident.Incident;
import org.standclear.incident.IncidentCases;
import org.standclear.incident.IncidentClass;
import org.standclear.incident.IncidentState;
import org.standclear.incident.MedicalNotes;
import org.standclear.people.PeopleRegister.Password;
import org.standclear.people.Person;
import org.standclear.platform.ids.IncidentId;
import org.standclear.platform.security.Role;
import org.standclear.run.ResetCause;
import org.standclear.run.RunEvent;
import org.standclear.signoff.BenchScene;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;
import org.standclear.testing.browser.Browser;
import org.standclear.testing.browser.BrowserTest;
import org.standclear.testing.browser.ScreenSize;

/** The three incidents of the demo, lived through in real browsers from the report to an action that helped. */
class IncidentStoryIT {

    abstract static class Cases extends IncidentCases {

        private ReportSeat reporter;
        private ReportSeat instructor;
        private ReportSeat technician;
        private Person tal;

        @BeforeEach
        void threeAtTheirBrowsers(Browser first, Browser second, Browser third) {
            Password password = new Password.Hashed(
                    application.getBean(PasswordEncoder.class).encode(BenchScene.PASSWORD));
            tal = scene().lab.person("Tal Emberley", password, Role.STUDENT);
            ines = scene().lab.person("Ines Quarryvale", password, Role.INSTRUCTOR);
            reporter = new ReportSeat(first);
            instructor = new ReportSeat(second).signIn(ines);
            technician = new ReportSeat(third).signIn(scene().hemi);
        }

        private Incident latest() {
            return incidents
                    .page(new org.standclear.incident.Incidents.Filter(scene().cell, null, null, null), null, 1)
                    .incidents()
                    .get(0);
        }

        private CellState cellState() {
            return cells.find(scene().cell).orElseThrow().state();
        }

        /** The review up to agreed actions, all through its page. */
        private void reviews(IncidentId id, ControlLevel level, String action, List<String> branches) {
            instructor
                    .visit("/incidents")
                    .follow(String.valueOf(now(id).number()))
                    .press("Review it");
            instructor.isUsable("a review").press("Take the review");
            branches.forEach(branch -> instructor
                    .open("Add a cause")
                    .choose("branch", branch)
                    .write("cause", "A cause that lies in " + branch)
                    .press("Add the cause"));
            instructor
                    .open("Agree on an action")
                    .write("action", action)
                    .choose("level", level.code())
                    .pick("owner", scene().hemi.id().toString())
                    .day("dueOn", today().plusDays(7))
                    .press("Agree on it");
        }

        private void doesTheAction() {
            technician.visit("/actions").isUsable("the list of actions").open("It is done");
            technician.write("words", "Done and tried").press("It is done");
        }

        private void closes(IncidentId id, String learned) {
            instructor.visit("/incidents/" + id + "/review").press("Close it");
            instructor.write("learned", learned).press("Close the incident");
            assertThat(now(id).state()).isEqualTo(IncidentState.CLOSED);
        }

        /** Thirty days later somebody other than the owner looks whether it helped. */
        private void looksWhetherItHelped(IncidentId id) {
            clock.moveBy(Duration.ofDays(30));
            instructor.visit("/actions").open("Did it help?");
            instructor
                    .choose("helped", "yes")
                    .write("words", "Nothing like it since")
                    .press("Note it");
            assertThat(actions.of(id))
                    .allSatisfy(one -> assertThat(one.isSettled()).isTrue());
        }

        @Test
        void aHandInTheLoopIsReportedFromAPhoneInUnderAMinute() {
            running();
            reporter.resize(ScreenSize.PHONE).signIn(tal).visit("/today");
            long started = System.nanoTime();
            reporter.press("Report a near miss");
            assertThat(reporter.text()).contains("Is anyone hurt?");
            reporter.choose("cell", scene().cell.toString())
                    .write("sentence", "Hand off the e-stop and into the cell while the loop waited; no contact")
                    .press("Send with my name");
            Duration took = Duration.ofNanos(System.nanoTime() - started);
            // what the pages take of the minute; the rest is a person's, for three taps and one sentence
            assertThat(took).isLessThan(Duration.ofSeconds(15));
            Incident incident = latest();
            assertThat(incident.kind()).isEqualTo(IncidentClass.NEAR_MISS);
            assertThat(incident.run()).isNotNull();
            assertThat(cellState()).isEqualTo(CellState.IN_SERVICE);
            reporter.isUsable("the reporter's page on a phone").picture("incident-near-miss");

            IncidentId id = incident.id();
            instructor.visit("/incidents/" + id + "/review").open("Set class and severity");
            instructor
                    .choose("actual", "none")
                    .choose("foreseeable", "treatment")
                    .write("because", "A finger in the gripper")
                    .press("Set them");
            reviews(
                    id,
                    ControlLevel.ENGINEERING,
                    "The loop stops instead of waiting",
                    List.of("people", "program", "organisation"));
            doesTheAction();
            closes(id, "A wait in a loop is motion");
            reporter.visit("/incidents/" + id);
            assertThat(reporter.text())
                    .contains("Ines Quarryvale reviews your report", "To be done: The loop stops instead of waiting")
                    .contains(
                            "Done: The loop stops instead of waiting", "What was learned: A wait in a loop is motion");
            looksWhetherItHelped(id);
            assertThat(reporter.visit("/incidents/" + id).text())
                    .contains("It helped: The loop stops instead of waiting");
        }

        @Test
        void aWrongOffsetHoldsTheCellUntilTheRulesLetItBack() {
            running();
            log.stop(scene().cell, RunEvent.Kind.PROTECTIVE_STOP, scene().noor.id());
            clock.moveBy(Duration.ofMinutes(1));
            log.finishStopped(scene().booking, 0, ResetCause.PART, scene().noor.id());
            reporter.signIn(scene().noor).visit("/incidents/near-miss");
            reporter.choose("cell", scene().cell.toString())
                    .pick("kind", "property-damage")
                    .write("sentence", "The new tool was saved with the old offset; the bit met the plate")
                    .press("Send with my name");
            Incident incident = latest();
            IncidentId id = incident.id();
            assertThat(cellState()).isEqualTo(CellState.HELD);
            assertThat(evidence.of(id).orElseThrow().holds()).isTrue();
            assertThat(reporter.text()).contains("The cell is held until the restart is approved.");
            technician.visit("/incidents/" + id).isUsable("an incident").picture("incident-held");
            assertThat(technician.text()).contains("recomputed now: all as they were.", "Restart not approved");

            // who was at the arm says what they saw; how bad it was says somebody who was not
            reporter.visit("/incidents/" + id + "/form");
            assertThat(reporter.path()).contains("/incidents/" + id).doesNotContain("/form");
            reporter.write("statement", "The bit met the plate on the first move down.")
                    .press("Add the statement");
            technician.visit("/incidents/" + id + "/form");
            technician
                    .write("story", "The offset of the old tool stood in the register.")
                    .choose("actual", "damage")
                    .choose("foreseeable", "treatment")
                    .press("Keep the form");
            reviews(id, ControlLevel.ENGINEERING, "Two people type the offset", List.of("people", "program", "cell"));

            returns();
            assertThat(technician.text()).contains("restart is not approved");
            assertThat(cellState()).isEqualTo(CellState.HELD);
            instructor.visit("/incidents/" + id + "/review").open("Approve the restart");
            instructor
                    .write("restart", "Bit and plate renewed, offset measured by two")
                    .press("Approve the restart");
            instructor.open("Note a review of it").write("outcome", "Tool change is a hazard of its own");
            instructor.write("cellVersion", "1").press("Note the review");
            returns();
            assertThat(cellState()).isEqualTo(CellState.IN_SERVICE);

            doesTheAction();
            closes(id, "A check knows only what the register says");
            looksWhetherItHelped(id);
        }

        /** The test list of a return to service, then the return itself by its page. */
        private void returns() {
            clock.moveBy(Duration.ofMinutes(2));
            application
                    .getBean(DayTests.class)
                    .record(scene().cell, scene().hemi.id(), SampleCell.goodReadings());
            SampleCell.readByTwo(application, scene().cell);
            technician.visit("/cells/" + scene().cell + "/return").write("reason", "Bit and plate renewed");
            technician.tick("confirmed").submit("/return");
        }

        @Test
        void aKnuckleOnTheBracketIsReportedAtTheBenchScreen() {
            running();
            log.finish(scene().booking, 5, scene().noor.id());
            reporter.resize(ScreenSize.TABLET).signIn(scene().screen).visit("/bench/" + scene().cell);
            reporter.press("Report a near miss");
            reporter.choose("cell", scene().cell.toString())
                    .pick("kind", "first-aid")
                    .write("sentence", "A part was taken out before motion was disabled; a knuckle met a bracket")
                    .press("Send");
            assertThat(reporter.text()).contains("Your receipt", "Is anyone hurt?");
            String receipt = reporter.path();
            reporter.isUsable("a receipt");
            Incident incident = latest();
            IncidentId id = incident.id();
            assertThat(incident.reporter()).isNull();
            assertThat(cellState()).isEqualTo(CellState.HELD);

            instructor.visit("/incidents/" + id + "/medical");
            instructor.write("note", "Graze, cleaned, plaster").press("Add the note");
            assertThat(application.getBean(MedicalNotes.class).opened(id)).hasSize(2);
            instructor.visit("/incidents/" + id + "/form");
            instructor
                    .write("story", "The part was taken while the arm parked.")
                    .choose("actual", "first-aid")
                    .choose("foreseeable", "treatment")
                    .press("Keep the form");
            reviews(id, ControlLevel.ADMINISTRATIVE, "Disable motion first", List.of("people", "cell", "organisation"));
            instructor
                    .open("Note a review of it")
                    .write("outcome", "Looked at, stays")
                    .press("Note the review");
            instructor
                    .open("Approve the restart")
                    .write("restart", "Bracket padded")
                    .press("Approve the restart");
            returns();
            assertThat(cellState()).isEqualTo(CellState.IN_SERVICE);
            doesTheAction();

            instructor.visit("/incidents/" + id + "/close").write("learned", "Motion first, then the part");
            instructor.press("Close the incident");
            assertThat(instructor.text()).contains("the instructor writes why");
            instructor
                    .write("whyOnlyWeak", "The camera has to see the nest; no other place for the bracket")
                    .press("Close the incident");
            assertThat(now(id).state()).isEqualTo(IncidentState.CLOSED);
            looksWhetherItHelped(id);
            assertThat(reporter.visit(receipt).text()).contains("It is closed. What was learned: Motion first");
        }
    }

    @Nested
    @OnH2
    @BrowserTest
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    @BrowserTest
    class OnPostgresEngine extends Cases {}
}
