package org.standclear.booking.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;

import java.util.List;
import java.util.UUID;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.context.ApplicationContext;
import org.springframework.mock.web.MockHttpServletResponse;
import org.standclear.booking.SampleLab;
import org.standclear.people.CourseRegister;
import org.standclear.people.Person;
import org.standclear.people.Teams;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.CourseId;
import org.standclear.platform.ids.SectionId;
import org.standclear.platform.security.Role;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;
import org.standclear.testing.web.PageCases;

/** Pairs and teams: kept by the instructor, first on the booking form, with who worked with whom. */
class PairPagesIT {

    abstract static class Cases extends PageCases {

        @Autowired
        ApplicationContext application;

        @Autowired
        CourseRegister register;

        @Autowired
        Teams teams;

        private static <T> T done(CourseRegister.Outcome<T> outcome) {
            return ((CourseRegister.Outcome.Done<T>) outcome).id();
        }

        private MockHttpServletResponse act(String path, Person by, String... values) {
            var request = post(path).param("formToken", UUID.randomUUID().toString());
            for (int i = 0; i < values.length; i += 2) {
                request = request.param(values[i], values[i + 1]);
            }
            return send(request, by);
        }

        @Test
        void putsPeopleIntoATeamWhoThenFindEachOtherFirst() {
            SampleLab lab = new SampleLab(application);
            Person ines = lab.person("Ines Quarryvale", Role.INSTRUCTOR);
            Person noor = lab.student("Noor Candlewick");
            Person mateo = lab.student("Mateo Ironbark");
            Person other = lab.student("Arjun Thistledown");
            CellId avocet = lab.cell(7);
            CourseId course =
                    done(register.addCourse("C" + UUID.randomUUID().toString().substring(0, 8), "Robots", null));
            SectionId section = done(register.addSection(course, "01", null));
            done(register.enrol(noor.id(), section, null));
            done(register.enrol(mateo.id(), section, null));
            String path = "/courses/" + course + "/teams";
            assertThat(page(get(path), ines).select("h1").text()).endsWith("has no teams yet");

            MockHttpServletResponse stranger = act(
                    path, ines, "in", section.toString(), "team", "A", "logins", noor.login() + " " + other.login());
            assertThat(stranger.getStatus()).isEqualTo(422);
            assertThat(document(stranger).text()).contains("Arjun Thistledown is not in that section.");
            assertThat(act(path, ines, "in", "", "team", "A", "logins", noor.login())
                            .getStatus())
                    .isEqualTo(422);
            assertThat(act(path, ines, "in", section.toString(), "team", "", "logins", noor.login())
                            .getStatus())
                    .isEqualTo(422);
            assertThat(teams.of(course)).isEmpty();
            location(act(
                    path, ines, "in", section.toString(), "team", "A", "logins", noor.login() + "\n" + mateo.login()));

            assertThat(page(get(path), ines).select("h1").text()).endsWith("has 1 team");
            assertThat(page(get("/me/partners"), noor).select("h1").text()).isEqualTo("You work with Mateo Ironbark");
            Document form = page(get("/book/slot?cell=" + avocet + "&start=2026-03-12T12:07:00Z"), noor);
            assertThat(form.select("select[name=attendant] option").get(1).text())
                    .isEqualTo("Mateo Ironbark (your partner)");
            assertThat(form.select("select[name=attendant] option[selected]").text())
                    .isEqualTo("Mateo Ironbark (your partner)");
            assertThat(send(get(path), noor).getStatus()).isEqualTo(403);
        }

        @Test
        void keepsWhoLeftAndTellsBookingsFromRuns() {
            SampleLab lab = new SampleLab(application);
            Person ines = lab.person("Ines Quarryvale", Role.INSTRUCTOR);
            Person noor = lab.student("Noor Candlewick");
            Person mateo = lab.student("Mateo Ironbark");
            CourseId course =
                    done(register.addCourse("C" + UUID.randomUUID().toString().substring(0, 8), "Robots", null));
            SectionId section = done(register.addSection(course, "01", null));
            List.of(noor, mateo).forEach(one -> done(register.enrol(one.id(), section, null)));
            teams.put(section, "A", List.of(noor.id(), mateo.id()), ines.id());
            teams.put(section, "B", List.of(noor.id()), ines.id());
            assertThat(teams.partnersOf(noor.id())).isEmpty();
            assertThat(teams.ofPerson(noor.id())).extracting(Teams.Member::team).containsExactly("B", "A");

            String path = "/courses/" + course + "/teams";
            String mine = teams.of(course).stream()
                    .filter(one -> one.person().equals(mateo.id()))
                    .findFirst()
                    .orElseThrow()
                    .id()
                    .toString();
            location(act(path + "/" + mine + "/remove", ines));
            assertThat(act(path + "/" + mine + "/remove", ines).getStatus()).isEqualTo(404);
            assertThat(page(get(path), ines).select("#past ~ ul").text()).contains("A: Mateo Ironbark");

            lab.booked(lab.cell(7), "2026-03-12T12:07:00Z", noor, mateo);
            Document booked = page(get("/me/partners"), mateo);
            assertThat(booked.select("#pairs ~ p").text()).as("no run").contains("Nobody yet");
            assertThat(booked.select("section[aria-labelledby=ahead] tbody tr").text())
                    .isEqualTo("Noor Candlewick Mateo Ironbark 1 booking Thu 12 Mar 12:07");
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
