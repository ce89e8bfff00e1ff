package org.standclear.retention;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.multipart;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;

import java.time.Duration;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.context.ApplicationContext;
import org.springframework.mock.web.MockHttpServletResponse;
import org.springframework.mock.web.MockMultipartFile;
import org.springframework.test.web.servlet.request.MockHttpServletRequestBuilder;
import org.standclear.booking.SampleLab;
import org.standclear.people.CourseRegister;
import org.standclear.people.Person;
import org.standclear.platform.access.AccessLog;
import org.standclear.platform.access.AccessLog.Look;
import org.standclear.platform.access.Sight;
import org.standclear.platform.security.Role;
import org.standclear.testing.MovableClock;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;
import org.standclear.testing.web.PageCases;

/** Looks are kept once for each person, record and hour; one's own never. */
class AccessLogIT {

    abstract static class Cases extends PageCases {

        @Autowired
        AccessLog looks;

        @Autowired
        ApplicationContext application;

        @Autowired
        CourseRegister courses;

        @Autowired
        MovableClock clock;

        private List<Look> by(Person viewer, Person whose) {
            return looks.latest(viewer.id(), whose.id(), null, 20);
        }

        private void look(Person viewer, Person whose) {
            looks.looked(viewer.id(), Sight.ACCOUNT, "it", Set.of(whose.id()));
        }

        @Test
        void keepsOneLookAnHour() {
            Person ines = person(Role.INSTRUCTOR);
            Person noor = person(Role.STUDENT);
            look(ines, noor);
            clock.moveBy(Duration.ofMinutes(59).plusSeconds(59));
            look(ines, noor);
            assertThat(by(ines, noor)).hasSize(1);
            assertThat(by(ines, noor).get(0).at()).isEqualTo(MovableClock.START);
            clock.moveBy(Duration.ofSeconds(1));
            look(ines, noor);
            assertThat(by(ines, noor)).hasSize(2);
            looks.looked(ines.id(), Sight.INCIDENT, "it", Set.of(noor.id()));
            looks.looked(ines.id(), Sight.ACCOUNT, "another", Set.of(noor.id()));
            assertThat(by(ines, noor)).hasSize(4);
        }

        @Test
        void keepsNoLookAtOnesOwn() {
            Person noor = person(Role.STUDENT);
            look(noor, noor);
            assertThat(looks.at(noor.id(), 50)).noneMatch(one -> one.viewer().equals(noor.id()));
        }

        @Test
        void tellsEverybodyOfLooksAtListsButNotOfThingsThatNameNobody() {
            Person ines = person(Role.INSTRUCTOR);
            Person noor = person(Role.STUDENT);
            looks.lookedAtMany(ines.id(), Sight.AUTHORISATIONS, "all");
            looks.looked(ines.id(), Sight.INCIDENT, "of nobody", Set.of());
            assertThat(looks.at(noor.id(), 500).stream()
                            .filter(one -> one.viewer().equals(ines.id()))
                            .map(Look::sight))
                    .containsExactly(Sight.AUTHORISATIONS);
            assertThat(looks.latest(ines.id(), null, null, 10)).hasSize(2);
        }

        @Test
        void keepsTheLookAtAPageThatComesBackAfterARefusal() {
            Person ines = person(Role.INSTRUCTOR);
            Person noor = new SampleLab(application).student("Noor Candlewick");
            String line = document(send(get("/me/record"), noor))
                    .select("select[name=about] option[value]:not([value=''])")
                    .val();
            location(send(filled("/me/record").param("about", line).param("words", "Was it so?"), noor));
            MockHttpServletResponse refused =
                    send(filled("/report/questions/" + UUID.randomUUID()).param("words", " "), ines);
            assertThat(refused.getStatus()).isEqualTo(422);
            assertThat(document(refused).text()).contains("Was it so?");
            assertThat(by(ines, noor)).extracting(Look::sight).containsExactly(Sight.QUESTIONS);
        }

        @Test
        void keepsTheLookAtARosterThatCannotBeTakenBack() {
            Person ines = person(Role.INSTRUCTOR);
            Person marit = person(Role.INSTRUCTOR);
            String own = UUID.randomUUID().toString().substring(0, 8);
            var made = (CourseRegister.Outcome.Done<?>) courses.addCourse("AL" + own, "Robots", null);
            assertThat(made.id()).isNotNull();
            String file = "login,name,course,section\nyuki" + own + ",Yuki Halfmoon,AL" + own + ",01\n";
            String roster = location(send(
                    multipart("/people/rosters")
                            .file(new MockMultipartFile("file", "a.csv", "text/csv", file.getBytes(UTF_8)))
                            .param("formToken", UUID.randomUUID().toString()),
                    ines));
            assertThat(send(filled(roster + "/undo"), marit).getStatus()).isEqualTo(422);
            assertThat(looks.latest(marit.id(), null, null, 5))
                    .singleElement()
                    .satisfies(look -> assertThat(look.sight()).isEqualTo(Sight.ROSTER));
        }

        private static MockHttpServletRequestBuilder filled(String path) {
            return post(path).param("formToken", UUID.randomUUID().toString());
        }

        @Test
        void goesOnAfterALookToTheNextPage() {
            Person ines = person(Role.INSTRUCTOR);
            for (int i = 0; i < 5; i++) {
                looks.looked(
                        ines.id(),
                        Sight.ACCOUNT,
                        "one " + i,
                        Set.of(person(Role.STUDENT).id()));
            }
            List<Look> first = looks.latest(ines.id(), null, null, 3);
            List<Look> second = looks.latest(ines.id(), null, first.get(2), 3);
            assertThat(first).hasSize(3);
            assertThat(second).hasSize(2).doesNotContainAnyElementsOf(first);
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
