package org.standclear.people.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.RepeatedTest;
import org.junit.jupiter.api.Test;
import org.springframework.mock.web.MockHttpServletResponse;
import org.standclear.booking.SampleLab;
import org.standclear.people.Enrolment;
import org.standclear.people.Person;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;

/** Two coordinators who send, apply and take back rosters about the same people at the same moment. */
class TwoRostersAtOnceIT {

    abstract static class Cases extends RosterCases {

        private static final String HEADER = "login,name,course,section\n";

        private static List<MockHttpServletResponse> atOnce(List<Callable<MockHttpServletResponse>> acts)
                throws Exception {
            ExecutorService threads = Executors.newFixedThreadPool(acts.size());
            try {
                List<MockHttpServletResponse> answers = new ArrayList<>();
                for (Future<MockHttpServletResponse> one : threads.invokeAll(acts)) {
                    answers.add(one.get());
                }
                return answers;
            } finally {
                threads.shutdown();
            }
        }

        private String seen(String preview) {
            return page(get(preview), ines()).select("input[name=seen]").val();
        }

        private Callable<MockHttpServletResponse> applying(String preview) {
            String seen = seen(preview);
            return () -> act(preview + "/apply", "takeOut", "true", "seen", seen);
        }

        private static List<Integer> statuses(List<MockHttpServletResponse> answers) {
            return answers.stream().map(MockHttpServletResponse::getStatus).toList();
        }

        @RepeatedTest(3)
        void oneOfTwoIsAppliedAndTheOtherIsShownWhatChanged() throws Exception {
            String rows = line("noor", "Noor Candlewick", "01") + line("wren", "Wren Saltmarsh", "01");
            String one = location(sendFile(HEADER + rows));
            String other = location(sendFile(HEADER + rows + line("tal", "Tal Emberley", "02")));

            List<MockHttpServletResponse> answers = atOnce(List.of(applying(one), applying(other)));

            assertThat(statuses(answers)).containsExactlyInAnyOrder(302, 422);
            MockHttpServletResponse refused = answers.stream()
                    .filter(answer -> answer.getStatus() == 422)
                    .findFirst()
                    .orElseThrow();
            assertThat(document(refused).select("[role=alert]").text()).contains("not what the page showed");
            Person noor = everybody.byLogin("noor" + own).orElseThrow();
            assertThat(courses.enrolmentsOf(noor.id())).hasSize(1);
        }

        @RepeatedTest(3)
        void aRosterIsTakenBackWhileAnotherIsApplied() throws Exception {
            Person kofi = new SampleLab(application).student("Kofi Marblewood");
            done(register.enrol(kofi.id(), Objects.requireNonNull(first), null));
            String out = location(sendFile(HEADER + line("noor", "Noor Candlewick", "02")));
            location(apply(out, "takeOut", "true"));
            assertThat(courses.enrolmentsOf(kofi.id())).isEmpty();
            String in = location(sendFile(HEADER + kofi.login() + ",Kofi Marblewood," + course + ",01\n"));

            List<MockHttpServletResponse> answers = atOnce(List.of(() -> act(out + "/undo"), applying(in)));

            assertThat(statuses(answers)).isSubsetOf(302, 422).contains(302);
            assertThat(courses.enrolmentsOf(kofi.id()))
                    .extracting(Enrolment::sectionCode)
                    .containsExactly("01");
        }

        @Test
        void oneRosterIsTakenBackOnce() throws Exception {
            String one = location(sendFile(HEADER + line("noor", "Noor Candlewick", "01")));
            location(apply(one, "takeOut", "true"));

            List<MockHttpServletResponse> answers = atOnce(List.of(() -> act(one + "/undo"), () -> act(one + "/undo")));

            assertThat(statuses(answers)).containsExactlyInAnyOrder(302, 422);
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
