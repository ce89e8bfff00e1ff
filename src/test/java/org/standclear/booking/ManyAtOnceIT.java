package org.standclear.booking;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.springframework.context.ApplicationContext;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.security.crypto.password.PasswordEncoder;
import org.standclear.people.PeopleRegister.Password;
import org.standclear.people.Person;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.lab.Labs;
import org.standclear.platform.security.Role;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;
import org.standclear.testing.web.WebPage;
import org.standclear.testing.web.WebUser;
import org.standclear.trail.Trail;
import org.standclear.trail.TrailVerification;

/** Fifty students, signed in at fifty browsers, press "Book this slot" for the same four slots at the same moment. */
class ManyAtOnceIT {

    private static final int STUDENTS = 50;
    private static final int SLOTS = 4;
    private static final String PASSWORD = "heron on the third post";

    abstract static class Cases {

        @Autowired
        ApplicationContext application;

        @Autowired
        PasswordEncoder encoder;

        @Autowired
        JdbcClient jdbc;

        @Autowired
        Trail trail;

        @Autowired
        Labs labs;

        @LocalServerPort
        int port;

        private record Claim(WebUser student, WebPage.WebForm form) {}

        @Test
        void letsExactlyOneStudentHaveEachSlot() throws Exception {
            SampleLab lab = new SampleLab(application);
            List<CellId> cells = List.of(lab.cell(0), lab.cell(7), lab.cell(15), lab.cell(22));
            List<String> starts = List.of(
                    "2026-03-12T12:00:00Z", "2026-03-12T12:07:00Z", "2026-03-12T12:15:00Z", "2026-03-12T12:22:00Z");
            Password password = new Password.Hashed(encoder.encode(PASSWORD));
            List<Claim> claims = new ArrayList<>();
            for (int i = 0; i < STUDENTS; i++) {
                Person student = lab.person("Student " + i, password, Role.STUDENT);
                lab.authorise(student.id());
                WebUser browser = WebUser.atPort(port).signIn(student.login(), PASSWORD);
                int slot = i % SLOTS;
                WebPage page = browser.get("/book/slot?cell=" + cells.get(slot) + "&start=" + starts.get(slot));
                claims.add(new Claim(browser, page.form("/book").with("attendant", "")));
            }

            List<WebPage> answers = allTogether(claims);

            List<WebPage> won =
                    answers.stream().filter(answer -> answer.status() == 302).toList();
            List<WebPage> lost =
                    answers.stream().filter(answer -> answer.status() == 409).toList();
            assertThat(answers).extracting(WebPage::status).containsOnly(302, 409);
            assertThat(won)
                    .hasSize(SLOTS)
                    .allSatisfy(answer -> assertThat(answer.location()).startsWith("/bookings/"));
            assertThat(lost).hasSize(STUDENTS - SLOTS).allSatisfy(answer -> {
                assertThat(answer.title()).startsWith("Not booked: ");
                assertThat(answer.text()).contains("somebody else has just booked this slot");
                assertThat(answer.document().select("a.slot[href^=/book/slot]")).isNotEmpty();
            });
            for (int i = 0; i < SLOTS; i++) {
                assertThat(count("select count(*) from bookings where cell_id = ?", cells.get(i)))
                        .isEqualTo(1);
                assertThat(count("select count(*) from booking_claims where subject = ?", cells.get(i)))
                        .isEqualTo(1);
                assertThat(jdbc.sql("select starts_at from bookings where cell_id = ?")
                                .param(cells.get(i).value())
                                .query(java.time.OffsetDateTime.class)
                                .single()
                                .toInstant())
                        .isEqualTo(Instant.parse(starts.get(i)));
            }
            assertThat(trail.verify(labs.theLab().id())).isInstanceOf(TrailVerification.Whole.class);

            sendsTheWinningFormAgain(claims, answers);
        }

        /** A double tap is one booking: the second answer leads to the first one's booking. */
        private void sendsTheWinningFormAgain(List<Claim> claims, List<WebPage> answers) {
            for (int i = 0; i < STUDENTS; i++) {
                if (answers.get(i).status() == 302) {
                    WebPage again = claims.get(i).student().submit(claims.get(i).form());
                    assertThat(again.location()).isEqualTo(answers.get(i).location());
                    return;
                }
            }
        }

        private long count(String sql, CellId cell) {
            return jdbc.sql(sql).param(cell.value()).query(Long.class).single();
        }

        private static List<WebPage> allTogether(List<Claim> claims) throws Exception {
            ExecutorService threads = Executors.newFixedThreadPool(claims.size());
            CountDownLatch go = new CountDownLatch(1);
            try {
                List<Future<WebPage>> sent = new ArrayList<>();
                for (Claim claim : claims) {
                    sent.add(threads.submit(() -> {
                        go.await();
                        return claim.student().submit(claim.form());
                    }));
                }
                go.countDown();
                List<WebPage> answers = new ArrayList<>();
                for (Future<WebPage> answer : sent) {
                    answers.add(answer.get());
                }
                return answers;
            } finally {
                threads.shutdownNow();
            }
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
