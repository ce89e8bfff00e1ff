package org.standclear.incident.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;

import java.util.Map;
import java.util.UUID;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.standclear.cell.CellState;
import org.standclear.incident.ControlLevel;
import org.standclear.incident.IncidentClass;
import org.standclear.incident.IncidentReports.Teller;
import org.standclear.incident.IncidentState;
import org.standclear.incident.MedicalNotes;
import org.standclear.incident.ReporterPart;
import org.standclear.people.Person;
import org.standclear.platform.access.AccessLog;
import org.standclear.platform.ids.IncidentId;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;

/** The pages of incidents: who sees what, what a form says when it is refused, and what the reporter gets to hear. */
class IncidentPagesIT {

    abstract static class Cases extends IncidentPageCases {

        private IncidentId sentBy(Person who) throws Exception {
            String led = led(submit(who, "/incidents/near-miss", nearMiss("yes")));
            return IncidentId.of(led.substring("/incidents/".length()));
        }

        @Test
        void asksFirstWhetherAnyoneIsHurt() throws Exception {
            for (Person who : new Person[] {scene().noor, scene().adaeze, ines, rosalind, scene().screen}) {
                Document form = see(who, "/incidents/near-miss");
                assertThat(form.expectFirst("main section, main form").text())
                        .startsWith("Is anyone hurt? If the arm moves, press the e-stop; anyone may. Then call");
                assertThat(form.select("form[action$=near-miss] [name]").eachAttr("name"))
                        .as("four fields: cell, class, one sentence, send")
                        .contains("cell", "kind", "sentence");
                assertThat(form.select("header a[href=/incidents/near-miss]"))
                        .as("from any screen")
                        .hasSize(1);
            }
            assertThat(see(scene().screen, "/bench/" + scene().cell).select("a[href^=/incidents/near-miss]"))
                    .isNotEmpty();
        }

        @Test
        void takesANearMissWithANameAndTellsTheReporter() throws Exception {
            IncidentId id = sentBy(scene().noor);
            Document mine = see(scene().noor, at(id));
            assertThat(mine.select("h1").text()).contains("near miss");
            assertThat(mine.text()).contains("Staff read it next.", "A hand was in the cell <b>while</b> it waited.");
            assertThat(mine.select("main b")).as("what people write is text").isEmpty();

            done(reviews.take(id, ines.id()));
            done(reviews.answer(id, "A cover comes on Thursday.", ines.id()));

            assertThat(see(scene().noor, at(id)).text())
                    .contains("Ines Quarryvale reviews your report.", "A cover comes on Thursday.");
            assertThat(see(scene().noor, "/incidents").text()).contains(String.valueOf(now(id).number()));
        }

        @Test
        void givesAReceiptToSomebodyWithoutAName() throws Exception {
            String led = led(submit(scene().noor, "/incidents/near-miss", nearMiss("no")));
            assertThat(led).matches("/incidents/receipts/[A-Z0-9]{4}-[A-Z0-9]{4}-[A-Z0-9]{4}");
            String receipt = led.substring("/incidents/receipts/".length());
            IncidentId id = incidents.byReceipt(receipt).orElseThrow().id();
            done(reviews.answer(id, "Thank you.", ines.id()));

            assertThat(see(scene().mateo, led).text()).contains("Thank you.", receipt);
            assertThat(led(send(scene().mateo, get("/incidents/receipts").param("receipt", " " + receipt + " "))))
                    .isEqualTo(led);
            assertThat(statusOf(scene().noor, at(id))).as("not theirs by name").isEqualTo(404);
            assertThat(see(ines, at(id)).text())
                    .contains("by somebody without a name")
                    .doesNotContain(scene().noor.printedName());
            assertThat(refusal(send(scene().mateo, get("/incidents/receipts").param("receipt", "AAAA-AAAA-AAAA"))))
                    .contains("No report has this receipt");
            assertThat(statusOf(scene().mateo, "/incidents/receipts/AAAA-AAAA-AAAA"))
                    .isEqualTo(404);
        }

        @Test
        void sendsAFormTwiceAndKeepsItOnce() throws Exception {
            String token = UUID.randomUUID().toString();
            Map<String, String> fields = nearMiss("yes");
            fields.put("formToken", token);
            String first = led(send(scene().noor, filled("/incidents/near-miss", fields)));
            String second = led(send(scene().noor, filled("/incidents/near-miss", fields)));

            assertThat(second).isEqualTo(first);
        }

        private org.springframework.test.web.servlet.request.MockHttpServletRequestBuilder filled(
                String path, Map<String, String> fields) {
            var request = org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post(path);
            fields.forEach(request::param);
            return request;
        }

        @Test
        void saysWhatIsMissingAndKeepsWhatWasTyped() throws Exception {
            Map<String, String> fields = nearMiss("yes");
            fields.put("cell", UUID.randomUUID().toString());
            fields.put("sentence", " ");
            var response = submit(scene().noor, "/incidents/near-miss", fields);
            assertThat(refusal(response)).contains("Choose the cell.", "one sentence");

            fields = nearMiss("no");
            fields.put("kind", "contact");
            response = submit(scene().noor, "/incidents/near-miss", fields);
            assertThat(refusal(response)).contains("a hold carries a name");
            assertThat(page(response).select("textarea[name=sentence]").text()).contains("A hand was in the cell");
            assertThat(cells.find(scene().cell).orElseThrow().state()).isEqualTo(CellState.IN_SERVICE);

            fields = nearMiss("yes");
            fields.put("sentence", "x".repeat(301));
            assertThat(refusal(submit(scene().noor, "/incidents/near-miss", fields)))
                    .contains("300 characters");
        }

        @Test
        void takesTheFullFormAndRefusesOneThatContradictsItself() throws Exception {
            Map<String, String> fields = nearMiss("yes");
            fields.putAll(Map.of("date", "2026-03-11", "time", "10:05", "part", "saw-it", "story", "It went so."));
            fields.putAll(Map.of("actual", "first-aid", "foreseeable", "treatment", "outcomes", "days-away"));
            assertThat(refusal(submit(scene().noor, "/incidents/report", fields)))
                    .contains("days away from work or class", "class 6");

            fields.put("kind", "medical-treatment");
            String led = led(submit(scene().noor, "/incidents/report", fields));
            IncidentId id = IncidentId.of(led.substring("/incidents/".length()));
            assertThat(cells.find(scene().cell).orElseThrow().state()).isEqualTo(CellState.HELD);
            assertThat(see(ines, at(id)).text())
                    .contains("It could reasonably have been treatment by a doctor", "days away from work or class")
                    .contains("Restart not approved");
            fields.put("date", "2026-02-30");
            fields.put("time", "noon");
            assertThat(refusal(submit(scene().noor, "/incidents/report", fields)))
                    .contains("Write a date", "Write a time");
        }

        @Test
        void showsOthersNothing() throws Exception {
            IncidentId id = sentBy(scene().noor);
            for (String path : new String[] {"", "/form"}) {
                assertThat(statusOf(scene().mateo, at(id) + path)).as(path).isEqualTo(404);
            }
            for (String path : new String[] {"/review", "/close", "/medical"}) {
                assertThat(statusOf(scene().noor, at(id) + path)).as(path).isEqualTo(403);
                assertThat(statusOf(scene().adaeze, at(id) + path)).as(path).isEqualTo(403);
            }
            assertThat(see(scene().mateo, "/incidents").text()).doesNotContain("A hand was in the cell");
            assertThat(statusOf(ines, at(IncidentId.next()))).isEqualTo(404);
            assertThat(statusOf(ines, at(IncidentId.next()) + "/medical")).isEqualTo(404);
            assertThat(submit(scene().mateo, at(id) + "/form", Map.of()).getStatus())
                    .isEqualTo(404);
        }

        @Test
        void keepsWhoOfTheStaffLooksAtTheStoryInItsForm() throws Exception {
            IncidentId id = sentBy(scene().noor);
            assertThat(see(ines, at(id) + "/form").expectFirst("h1").text())
                    .as("what somebody else reported")
                    .startsWith("Incident ");
            assertThat(application
                            .getBean(AccessLog.class)
                            .latest(null, scene().noor.id(), null, 20))
                    .filteredOn(look -> look.subject().equals(id.toString()))
                    .singleElement()
                    .satisfies(look -> assertThat(look.viewer()).isEqualTo(ines.id()));
        }

        @Test
        void keepsTheMedicalPartToItselfAndWhoOpensIt() throws Exception {
            IncidentId id = reported(IncidentClass.FIRST_AID);
            led(submit(ines, at(id) + "/medical", Map.of("note", "graze on the second knuckle")));

            assertThat(see(rosalind, at(id) + "/medical").text())
                    .contains("graze on the second knuckle", "Rosalind Oyelaran-Pike");
            assertThat(application.getBean(MedicalNotes.class).opened(id))
                    .extracting(MedicalNotes.Opened::by)
                    .contains(rosalind.id());
            for (Person who : new Person[] {ines, rosalind, scene().adaeze}) {
                assertThat(see(who, at(id)).text()).doesNotContain("knuckle");
            }
            assertThat(see(scene().adaeze, at(id)).text()).doesNotContain("medical part");
            assertThat(refusal(submit(ines, at(id) + "/medical", Map.of("note", ""))))
                    .contains("Write the note.");
        }

        @Test
        void walksAReviewThroughItsForms() throws Exception {
            IncidentId id = reported(IncidentClass.CONTACT);
            done(reports.fill(id, IncidentClass.CONTACT, FORM, scene().hemi.id()));
            assertThat(see(ines, at(id) + "/review").select("h1").text()).isEqualTo("Nobody has taken the review.");
            led(submit(ines, at(id) + "/review", Map.of()));
            assertThat(refusal(submit(ines, at(id) + "/causes", Map.of())))
                    .contains("Choose the branch.", "Say the cause");
            for (String branch : new String[] {"people", "program", "organisation"}) {
                led(submit(ines, at(id) + "/causes", Map.of("branch", branch, "cause", "Because of " + branch)));
            }
            String hemi = scene().hemi.id().toString();
            assertThat(refusal(submit(
                            ines,
                            at(id) + "/actions",
                            Map.of(
                                    "action",
                                    "x",
                                    "level",
                                    "engineering",
                                    "owner",
                                    scene().noor.id().toString(),
                                    "dueOn",
                                    "2026-03-20"))))
                    .as("a student owns no action")
                    .contains("Choose who does it.");
            assertThat(refusal(submit(
                            ines,
                            at(id) + "/actions",
                            Map.of("action", "x", "level", "engineering", "owner", hemi, "dueOn", "2026-03-10"))))
                    .contains("That day is over.");
            led(submit(
                    ines,
                    at(id) + "/actions",
                    Map.of("action", "Put a cover on", "level", "engineering", "owner", hemi, "dueOn", "2026-03-20")));
            led(submit(
                    ines,
                    at(id) + "/risk-reviews",
                    Map.of("reviewedOn", "2026-03-11", "outcome", "Cover added", "cellVersion", "1")));
            led(submit(ines, at(id) + "/restart", Map.of("restart", "Looked over")));
            assertThat(refusal(submit(ines, at(id) + "/close", Map.of("learned", "Cover it."))))
                    .contains("An action is not done yet.");
            Document list = see(scene().hemi, "/actions");
            assertThat(list.select("h1").text()).contains("One action of yours is open");
            String action = actions.of(id).get(0).id().toString();
            assertThat(refusal(submit(scene().hemi, "/actions/" + action + "/done", Map.of())))
                    .contains("Say what was done.");
            led(submit(scene().hemi, "/actions/" + action + "/done", Map.of("words", "The cover is on")));
            led(submit(ines, at(id) + "/close", Map.of("learned", "Cover it.")));

            assertThat(now(id).state()).isEqualTo(IncidentState.CLOSED);
            assertThat(see(rosalind, at(id)).text()).contains("closed", "cell version 1 came out of it", "Cover it.");
            assertThat(statusOf(ines, "/actions/" + UUID.randomUUID() + "/done"))
                    .isIn(404, 405);
        }

        @Test
        void tellsAnInvolvedInstructorWhoReviewsInstead() throws Exception {
            IncidentId id = kept(send(IncidentClass.NEAR_MISS, new Teller.Named(ines.id(), ReporterPart.IN_IT)))
                    .incident();
            assertThat(see(ines, at(id)).text()).contains("You had a part in it");
            assertThat(refusal(submit(ines, at(id) + "/review", Map.of()))).contains("You had a part in it");
            Document desk = see(rosalind, "/reviewer");
            assertThat(desk.text()).contains("Incident " + now(id).number());
            assertThat(desk.select("main a[href=/report], main a[href=/due]")).hasSize(2);
            assertThat(desk.select("section[aria-labelledby=assessments]").text())
                    .contains("Reviews of risk assessments");
        }

        @Test
        void filtersAndRefusesFiltersThatCannotBe() throws Exception {
            IncidentId id = reported(IncidentClass.NEAR_MISS);
            String cell = "?cell=" + scene().cell;
            assertThat(see(ines, "/incidents" + cell).text()).contains("The hand was in the cell");
            assertThat(see(ines, "/incidents" + cell + "&kind=contact").text()).contains("No report here");
            assertThat(see(ines, "/incidents" + cell + "&state=open&kind=near-miss")
                            .text())
                    .contains(String.valueOf(now(id).number()));
            assertThat(refusal(send(ines, get("/incidents?kind=worst")))).contains("Choose a class");
            assertThat(refusal(send(ines, get("/incidents?after=2026")))).contains("Begin at its top");
        }

        @Test
        void showsDueAndOverdue() throws Exception {
            IncidentId id = reported(IncidentClass.CONTACT);
            assertThat(see(ines, at(id)).text()).contains("form: due until Wed 11 Mar 2026");
            clock.moveBy(java.time.Duration.ofHours(5));
            assertThat(see(ines, at(id)).text()).contains("form: overdue since");
            done(reviews.take(id, ines.id()));
            reviewed(id, ControlLevel.ENGINEERING);
            clock.moveBy(java.time.Duration.ofDays(8));
            assertThat(see(scene().hemi, "/actions").text()).contains("overdue since");
            assertThat(see(ines, at(id)).text()).contains(", late");
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
