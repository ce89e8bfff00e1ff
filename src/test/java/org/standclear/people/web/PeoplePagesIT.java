package org.standclear.people.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Set;
import java.util.UUID;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.standclear.people.CourseRegister;
import org.standclear.people.Person;
import org.standclear.people.SigningPins;
import org.standclear.platform.ids.CourseId;
import org.standclear.platform.security.Role;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;
import org.standclear.testing.web.WebPage;
import org.standclear.testing.web.WebPage.WebForm;
import org.standclear.testing.web.WebUser;

/** What administrators, instructors and technicians do on the pages about people, on both engines. */
class PeoplePagesIT {

    abstract static class Cases extends PeoplePageCases {

        @Test
        void addsAPersonOnceThoughTheFormIsSentTwice() {
            WebForm form = admin.get("/people/new")
                    .form("/people")
                    .with("printedName", "  Yuki <i>Halfmoon</i> ")
                    .with("login", "Yuki-" + tag)
                    .with("password", "start of a long term")
                    .with("roles", "STUDENT");

            WebPage done = admin.submit(form);
            WebPage twin = admin.submit(form);

            assertThat(done.status()).isEqualTo(302);
            assertThat(twin.location()).isEqualTo(done.location());
            WebPage page = admin.follow(done);
            assertThat(page.document().select("h1").text()).isEqualTo("Yuki <i>Halfmoon</i>");
            assertThat(page.document().select("h1 i")).isEmpty();
            assertThat(page.text()).contains("yuki-" + tag, "temporary, to be changed at the next sign-in");
        }

        @Test
        void showsTheFormAgainWithWhatIsWrong() {
            WebForm form = admin.get("/people/new")
                    .form("/people")
                    .with("printedName", "Kofi\u0007Marblewood")
                    .with("login", "kofi-" + tag)
                    .with("password", "start of a long term");

            WebPage again = admin.submit(form);

            assertThat(again.status()).isEqualTo(422);
            assertThat(again.document().select("#printedName-error").text()).startsWith("Leave out character 5");
            assertThat(again.document().select("#login").val()).isEqualTo("kofi-" + tag);
            assertThat(again.document().select("#password").val()).isEmpty();
            assertThat(people.byLogin("kofi-" + tag)).isEmpty();
            WebPage mended = admin.submit(again.form("/people")
                    .with("printedName", "Kofi Marblewood")
                    .with("password", "start of a long term"));
            assertThat(mended.status()).isEqualTo(302);
        }

        @Test
        void listsPageByPageAndFindsByPartOfTheName() {
            for (int i = 0; i < 27; i++) {
                add(tag + " 100%_ " + (char) ('A' + i % 26) + i, Role.REVIEWER);
            }
            WebPage first = admin.get("/people?find=" + tag + "+100%25_");
            assertThat(first.document().select("tbody tr")).hasSize(25);
            WebPage second = admin.get(first.document().select("a[rel=next]").attr("href"));
            assertThat(second.document().select("tbody tr")).hasSize(2);
            assertThat(second.document().select("a[rel=next]")).isEmpty();
            assertThat(first.document().select("tbody th").eachText())
                    .doesNotContainAnyElementsOf(
                            second.document().select("tbody th").eachText());

            assertThat(admin.get("/people?find=" + tag + "+100_%25").text()).contains("Nobody fits");
            assertThat(admin.get("/people?find=" + tag + "&role=STUDENT").text())
                    .contains("Nobody fits");
            assertThat(admin.get("/people?after=nonsense").status()).isEqualTo(400);
            assertThat(admin.get("/people?find=%00").status()).isEqualTo(400);
            assertThat(admin.get("/people?find=%C3%28").status()).isEqualTo(400);
            assertThat(admin.get("/people?find=" + "x".repeat(5000)).status()).isEqualTo(400);
        }

        @Test
        void showsBothWhenTwoChangeTheSameRoles() {
            Person pilar = add("Pilar " + tag, Role.STUDENT);
            WebForm mine = admin.get("/people/" + pilar.id()).form("/people/" + pilar.id() + "/roles");
            register.setRoles(pilar.id(), Set.of(Role.TECHNICIAN), 1, pilar.id());

            WebPage conflict = admin.submit(mine.with("roles", "REVIEWER"));

            assertThat(conflict.status()).isEqualTo(409);
            assertThat(conflict.text()).contains("safety reviewer", "technician", "Nothing of yours was stored");
        }

        @Test
        void closesAnAccountAfterAskingForAReason() {
            Person linnea = add("Linnea " + tag, Role.STUDENT);
            String path = "/people/" + linnea.id() + "/close";
            WebPage asked = admin.get(path);
            assertThat(asked.text()).contains("Close the account of Linnea " + tag + "?");
            WebPage again = admin.submit(asked.form(path).with("reason", " "));
            assertThat(again.status()).isEqualTo(422);

            admin.submit(again.form(path).with("reason", "left the college"));

            assertThat(people.find(linnea.id()).orElseThrow().active()).isFalse();
            assertThat(admin.get("/people?state=closed&find=Linnea+" + tag).text())
                    .contains("account closed");
            WebPage page = admin.get("/people/" + linnea.id());
            admin.submit(page.form("/people/" + linnea.id() + "/open").with("reason", "back again"));
            assertThat(people.find(linnea.id()).orElseThrow().active()).isTrue();
        }

        @Test
        void authorisesUntilADayThatExists() {
            WebUser instructor = signedIn(add("Ines Quarryvale", Role.INSTRUCTOR));
            Person dmitri = add("Dmitri " + tag, Role.STUDENT);
            String path = "/people/" + dmitri.id() + "/authorisations";
            WebForm form = instructor.get(path).form(path).with("reason", "induction on 9 March");

            assertThat(instructor.submit(form.with("until", "2026-02-30")).text())
                    .contains("There is no such day");
            assertThat(instructor.submit(form.with("until", "2026-03-10")).text())
                    .contains("That day is over");
            assertThat(instructor.submit(form.with("until", "+999999999-01-01")).text())
                    .contains("Choose a day between 2000 and 2100", "Authorise Dmitri");
            assertThat(instructor
                            .submit(form.with("cell", UUID.randomUUID().toString()))
                            .text())
                    .contains("Choose one of the lab's cells");
            WebPage page = instructor.follow(instructor.submit(form.with("until", "2026-03-31")));
            assertThat(page.text()).contains("operator", "every cell", "until Tue 31 Mar", "induction on 9 March");

            WebPage asked = instructor.get(page.document().select("td a").attr("href"));
            WebPage revoked = instructor.follow(
                    instructor.submit(asked.form("/people/").with("reason", "stood inside the line")));
            assertThat(revoked.text()).contains("revoked Wed 11 Mar", "stood inside the line");
            assertThat(instructor
                            .get("/people/authorisations?find=Dmitri+" + tag)
                            .status())
                    .isEqualTo(200);
        }

        @Test
        void plansDutyOnTimesThatExist() {
            Person hemi = add("Hemi " + tag, Role.TECHNICIAN);
            WebUser technician = signedIn(hemi);
            WebForm form = technician
                    .get("/people/duty")
                    .form("/people/duty")
                    .with("person", hemi.id().toString());

            assertThat(technician.submit(form.with("day", "2026-04-31")).text()).contains("There is no such day");
            assertThat(technician.submit(form.with("from", "25:00")).text()).contains("There is no such time");
            assertThat(technician.submit(form.with("until", "08:00")).text()).contains("would end before it begins");
            WebPage week = technician.follow(technician.submit(form.with("day", "2026-03-12")));
            assertThat(week.text())
                    .contains("08:00-17:00 Hemi " + tag + " planned by themselves")
                    .contains("Planned by the people themselves this week: ");
        }

        @Test
        void letsAnInstructorChangeTheLimitsOfACourse() {
            CourseId course = ((CourseRegister.Outcome.Done<CourseId>)
                            courseRegister.addCourse("T " + tag, "Assembly Cells", null))
                    .id();
            WebUser instructor = signedIn(add("Tomasz Fennimore-Ash", Role.INSTRUCTOR));
            String path = "/courses/" + course;
            assertThat(admin.get(path).document().select("form[action$=limits]"))
                    .isEmpty();
            WebForm form = instructor.get(path).form(path + "/limits").with("reason", "first week");

            for (String wrong : new String[] {"NaN", "Infinity", "-1", "0", "101", "1e2", "0x1p3", ""}) {
                WebPage again = instructor.submit(form.with("overridePercent", wrong));
                assertThat(again.status()).as(wrong).isEqualTo(422);
                assertThat(again.document().select("#overridePercent-error").text())
                        .as(wrong)
                        .isNotEmpty();
            }
            WebPage done = instructor.follow(
                    instructor.submit(form.with("overridePercent", "37,5").with("toolSpeedMmS", "200")));
            assertThat(done.text()).contains("Override at most 37.5 %, tool speed 200 mm/s", "first week");
            assertThat(instructor
                            .submit(form.with("formToken", UUID.randomUUID().toString())
                                    .with("overridePercent", "60"))
                            .status())
                    .isEqualTo(409);
        }

        @Test
        void givesACourseSectionsStudentsAndAnAssignment() {
            CourseId course = ((CourseRegister.Outcome.Done<CourseId>)
                            courseRegister.addCourse("S " + tag, "Evening certificate", null))
                    .id();
            Person amara = add("Amara Nettleship", Role.STUDENT);
            WebUser instructor = signedIn(add("Ines Quarryvale", Role.INSTRUCTOR));
            String path = "/courses/" + course;
            WebPage page = instructor.follow(instructor.submit(
                    instructor.get(path).form(path + "/sections").with("code", "01")));
            WebForm enrol = page.form(path + "/students");

            Person gone = add("Baraka Hollowell", Role.STUDENT);
            register.deactivate(gone.id(), "left", org.standclear.platform.ids.PersonId.next());
            assertThat(instructor
                            .submit(enrol.with("logins", amara.login() + "\n" + gone.login()))
                            .text())
                    .contains("No open account has the sign-in name " + gone.login());
            assertThat(courses.enrolmentsOf(amara.id())).isEmpty();
            page = instructor.follow(instructor.submit(enrol.with("logins", amara.login())));
            assertThat(page.text()).contains("1 student");
            WebForm due = page.form(path + "/assignments").with("assignmentTitle", "Peg and plate");
            assertThat(instructor.submit(due).text()).contains("Give one section or more a day");
            String field = due.values().keySet().stream()
                    .filter(name -> name.startsWith("due-"))
                    .findFirst()
                    .orElseThrow();
            page = instructor.follow(instructor.submit(due.with(field, "2026-03-19")));
            assertThat(page.text()).contains("Peg and plate 01 Thu 19 Mar 2026 17:00");
            assertThat(courses.assignmentsOf(amara.id())).hasSize(1);
        }

        @Test
        void choosesAPinOfOnesOwn() {
            Person wren = add("Wren Saltmarsh", Role.STUDENT);
            WebUser user = signedIn(wren);
            WebForm form = user.get("/me/pin").form("/me/pin").with("current", PASSWORD);

            assertThat(user.submit(form.with("pin", "123456").with("pinAgain", "123456"))
                            .text())
                    .contains("first to be guessed");
            assertThat(user.submit(form.with("pin", "274913").with("pinAgain", "274914"))
                            .text())
                    .contains("The two PINs differ");
            assertThat(user.submit(form.with("current", "wrong")
                                    .with("pin", "274913")
                                    .with("pinAgain", "274913"))
                            .text())
                    .contains("This is not your password");
            assertThat(pins.isSet(wren.id())).isFalse();
            WebPage done = user.follow(user.submit(form.with("pin", "274913").with("pinAgain", "274913")));
            assertThat(done.text()).contains("You have a signing PIN", "stored");
            assertThat(pins.check(wren.id(), "274913")).isEqualTo(new SigningPins.Outcome.Right());
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
