package org.standclear.retention;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;

import java.time.Duration;
import java.time.LocalDate;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.context.ApplicationContext;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.mock.web.MockHttpServletResponse;
import org.standclear.booking.SecondLab;
import org.standclear.booking.allocation.WindowClosing;
import org.standclear.booking.allocation.Windows;
import org.standclear.booking.labs.LabRegister;
import org.standclear.incident.IncidentClass;
import org.standclear.incident.IncidentReports;
import org.standclear.incident.IncidentReports.Report;
import org.standclear.incident.IncidentReports.Reported;
import org.standclear.incident.IncidentReports.Teller;
import org.standclear.incident.ReporterPart;
import org.standclear.people.Person;
import org.standclear.platform.ids.IncidentId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.lab.Labs;
import org.standclear.platform.retention.Concern.About;
import org.standclear.platform.security.Role;
import org.standclear.platform.time.SqlTime;
import org.standclear.testing.MovableClock;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;
import org.standclear.testing.web.PageCases;

/** A lab is not taken out of use while something in it is not settled; the page lists each thing, with where it is settled. */
class LabLooseEndsIT {

    abstract static class Cases extends PageCases {

        @Autowired
        ApplicationContext application;

        @Autowired
        LabRegister register;

        @Autowired
        IncidentReports reports;

        @Autowired
        LegalHolds holds;

        @Autowired
        Windows windows;

        @Autowired
        WindowClosing closing;

        @Autowired
        Labs labs;

        @Autowired
        JdbcClient jdbc;

        @Autowired
        MovableClock clock;

        private SecondLab lab;
        private SecondLab neighbour;
        private Person marit;
        private String path;

        @BeforeEach
        void twoLabsMore() {
            lab = new SecondLab(application, "America/Halifax");
            neighbour = new SecondLab(application, "Europe/Berlin");
            marit = person(Role.ADMINISTRATOR);
            path = "/labs/" + lab.id() + "/close";
        }

        private IncidentId incident() {
            Reported reported = lab.in(() -> reports.report(Report.brief(
                    lab.cell(),
                    IncidentClass.NEAR_MISS,
                    "The hand was in the cell.",
                    new Teller.Named(lab.person(Role.STUDENT).id(), ReporterPart.SAW_IT))));
            return ((Reported.Kept) reported).incident();
        }

        private UUID holdOn(IncidentId incident) {
            return lab.in(() -> holds.place(
                    new LegalHold.Target.One(About.INCIDENT, incident.value()),
                    "an insurer asks",
                    "case 12",
                    lab.person(Role.INSTRUCTOR).id()));
        }

        private List<String> says() {
            return page(get(path), marit)
                    .select("#first + ul li span:first-child")
                    .eachText();
        }

        private MockHttpServletResponse close() {
            return send(
                    post(path).param("formToken", UUID.randomUUID().toString()).param("reason", "the room is rebuilt"),
                    marit);
        }

        private boolean isClosed() {
            return labs.find(lab.id()).orElseThrow().closed();
        }

        private void refused(String because) {
            assertThat(says()).anyMatch(line -> line.contains(because));
            MockHttpServletResponse answer = close();
            assertThat(answer.getStatus()).isEqualTo(422);
            assertThat(document(answer).select(".errors").text()).contains(because);
            assertThat(isClosed()).isFalse();
        }

        @Test
        void anOpenIncidentKeepsItInUseAndIsLinked() {
            IncidentId incident = incident();

            refused("Incident 1 is not closed");

            Document asked = page(get(path), marit);
            assertThat(asked.select("main form[method=post]"))
                    .as("nothing to send yet")
                    .isEmpty();
            assertThat(asked.select("#first + ul a"))
                    .as("not for an administrator to open")
                    .isEmpty();
            assertThat(send(get("/incidents/" + incident), marit).getStatus()).isEqualTo(404);

            register.appoint(lab.id(), marit.login(), Set.of(Role.INSTRUCTOR), PersonId.next());

            assertThat(page(get(path), marit).select("#first + ul a").eachAttr("href"))
                    .containsExactly("/incidents/" + incident);
            assertThat(send(get("/incidents/" + incident), marit).getStatus()).isEqualTo(200);
        }

        @Test
        void anActionThatNobodyLookedAtAgainKeepsItInUse() {
            IncidentId incident = incident();
            jdbc.sql("update incidents set state = 'CLOSED', closed_at = :now where id = :id")
                    .param("now", SqlTime.toSql(clock.instant()))
                    .param("id", incident.value())
                    .update();
            assertThat(says()).isEmpty();
            jdbc.sql("""
                    insert into incident_actions (id, incident_id, words, control_level, owner, due_on, added_by, added_at)
                    values (:id, :incident, 'Put a cover on it', 'ENGINEERING', :by, :due, :by, :now)""")
                    .param("id", UUID.randomUUID())
                    .param("incident", incident.value())
                    .param("by", lab.person(Role.TECHNICIAN).id().value())
                    .param("due", LocalDate.parse("2026-04-01"))
                    .param("now", SqlTime.toSql(clock.instant()))
                    .update();

            refused("Incident 1 is closed, but 1 corrective action is not done or not looked at again");
        }

        @Test
        void aLegalHoldKeepsItInUseUntilASecondPersonLiftsIt() {
            IncidentId incident = incident();
            jdbc.sql("update incidents set state = 'CLOSED', closed_at = :now where id = :id")
                    .param("now", SqlTime.toSql(clock.instant()))
                    .param("id", incident.value())
                    .update();
            UUID hold = holdOn(incident);

            refused("1 legal hold stands");

            assertThat(lab.in(() -> holds.lift(hold, "settled", PersonId.next())))
                    .isEmpty();
            assertThat(says()).isEmpty();
            assertThat(location(close())).isEqualTo("/labs/" + lab.id());
            assertThat(isClosed()).isTrue();
        }

        @Test
        void aDisposalListThatIsNotThroughKeepsItInUse() {
            UUID list = UUID.randomUUID();
            jdbc.sql("""
                    insert into retention_lists (id, lab_id, month_code, fingerprint, records, approved_by, approved_at,
                        carry_out_from)
                    values (:id, :lab, '2026-03', :print, 3, :by, :now, :now)""")
                    .param("id", list)
                    .param("lab", lab.id().value())
                    .param("print", "0".repeat(64))
                    .param("by", marit.id().value())
                    .param("now", SqlTime.toSql(clock.instant()))
                    .update();

            refused("The disposal list of 2026-03 is not carried out");

            assertThat(page(get(path), marit).select("#first + ul a").eachAttr("href"))
                    .containsExactly("/retention/lists/" + list);
            jdbc.sql("update retention_lists set finished_at = approved_at where id = :id")
                    .param("id", list)
                    .update();
        }

        @Test
        void aSearchForAPlanThatGoesOnKeepsItInUse() {
            UUID window = lab.in(() -> windows.open(
                    "Rush week",
                    LocalDate.parse("2026-03-16"),
                    LocalDate.parse("2026-03-20"),
                    clock.instant().plus(Duration.ofDays(2)),
                    lab.person(Role.INSTRUCTOR).id()));
            assertThat(says()).noneMatch(line -> line.contains("search"));
            jdbc.sql("""
                    insert into booking_searches (id, window_id, state, seed, standing, stop_asked, says, begun_by, begun_at,
                        alive_at) values (:id, :window, 'RUNNING', 1, '', false, '', :by, :now, :now)""")
                    .param("id", UUID.randomUUID())
                    .param("window", window)
                    .param("by", marit.id().value())
                    .param("now", SqlTime.toSql(clock.instant()))
                    .update();

            assertThat(says()).anyMatch(line -> line.contains("1 search for a plan goes on"));
            assertThat(close().getStatus()).isEqualTo(422);
        }

        @Test
        void aWindowWithoutAPlanKeepsItInUseUntilItIsClosed() {
            Person instructor = lab.person(Role.INSTRUCTOR);
            UUID window = lab.in(() -> windows.open(
                    "Rush week",
                    LocalDate.parse("2026-03-16"),
                    LocalDate.parse("2026-03-20"),
                    clock.instant().plus(Duration.ofDays(2)),
                    instructor.id()));

            refused("The window \"Rush week\" has no plan");

            assertThat(page(get(path), marit).select("#first + ul").text())
                    .contains("Mon 16 Mar to Fri 20 Mar", "0 people have asked")
                    .contains("Ask ", instructor.printedName() + " (instructor)");
            assertThat(lab.in(() -> closing.close(window, "not needed", instructor.id())))
                    .isEmpty();
            assertThat(says()).isEmpty();
            clock.moveBy(Duration.ofDays(20));
            assertThat(lab.in(() -> closing.reopen(window, instructor.id()))).isPresent();
            clock.moveToStart();
        }

        @Test
        void anAdministratorSeesWhatItIsAndWhomToAskAndNothingOfTheReport() {
            incident();
            Person noor = lab.person(Role.STUDENT);
            lab.in(() -> lab.sample().booked(lab.cell(), "2026-03-12T13:00:00Z", noor, null));

            String shown = page(get(path), marit).select("#first + ul").text();

            assertThat(shown)
                    .contains("1 booking is ahead", "Farcell", "Thu 12 Mar", "booked")
                    .contains("near miss, reported Wed 11 Mar, reported, not reviewed yet")
                    .contains(lab.person(Role.TECHNICIAN).printedName() + " (technician)")
                    .contains(lab.person(Role.REVIEWER).printedName() + " (safety reviewer)")
                    .doesNotContain("The hand was in the cell")
                    .doesNotContain(noor.printedName());
        }

        @Test
        void whatAnotherLabHasToSettleDoesNotCount() {
            incident();
            path = "/labs/" + neighbour.id() + "/close";

            assertThat(says()).isEmpty();
            assertThat(location(close())).isEqualTo("/labs/" + neighbour.id());
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
