package org.standclear.people.signin;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.system.CapturedOutput;
import org.springframework.boot.test.system.OutputCaptureExtension;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.context.TestPropertySource;
import org.springframework.transaction.PlatformTransactionManager;
import org.springframework.transaction.support.TransactionTemplate;
import org.standclear.people.People;
import org.standclear.people.signin.SetUp.Finished;
import org.standclear.people.signin.SetUp.FirstAdministrator;
import org.standclear.platform.lab.Lab;
import org.standclear.platform.lab.Labs;
import org.standclear.platform.security.Role;
import org.standclear.testing.MovableClock;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;
import org.standclear.testing.web.WebPage;
import org.standclear.testing.web.WebUser;

/** The first start, in an application of its own for each engine, since it happens once. */
class SetUpIT {

    @ExtendWith(OutputCaptureExtension.class)
    abstract static class Cases {

        private static final Pattern PRINTED =
                Pattern.compile("give this code, once: ([2-9A-Z]{4}(?:-[2-9A-Z]{4}){4})");

        @LocalServerPort
        int port;

        @Autowired
        SetUpCode start;

        @Autowired
        SetUp setUp;

        @Autowired
        Labs labs;

        @Autowired
        People people;

        @Autowired
        JdbcClient jdbc;

        @Autowired
        MovableClock clock;

        @Autowired
        PlatformTransactionManager transactions;

        private String printed(CapturedOutput output) {
            start.print();
            Matcher code = PRINTED.matcher(output);
            String last = "";
            while (code.find()) {
                last = code.group(1);
            }
            return last;
        }

        private static WebPage.WebForm filled(WebPage page, String code) {
            return page.form("/setup")
                    .with("code", code)
                    .with("printedName", "Ines Quarryvale")
                    .with("login", "ines")
                    .with("password", "a lamp over tern hall")
                    .with("passwordAgain", "a lamp over tern hall")
                    .with("college", "Quillhaven Technical College")
                    .with("labName", "Tern Hall Robot Bench")
                    .with("room", "114")
                    .with("zone", "Europe/Berlin")
                    .with("emergencyNumber", "112")
                    .with("firstAider", "Hemi Coppergate, room 112")
                    .with("stopMap", "on each bench's front edge");
        }

        @Test
        void worksOnceForWhoeverReadsTheLog(CapturedOutput output) throws Exception {
            String code = printed(output);
            assertThat(code).isNotEmpty();
            assertThat(jdbc.sql("select code_sha256 from set_up_codes")
                            .query(String.class)
                            .list())
                    .isNotEmpty()
                    .allMatch(hash -> hash.matches("[0-9a-f]{64}"));
            WebUser user = WebUser.atPort(port);
            assertThat(user.get("/sign-in").text()).contains("This lab has no administrator yet.");

            refusesWhatIsWrong(user, code);
            pausesAfterFiveWrongCodes(user, code);
            WebPage done = user.submit(filled(user.get("/setup"), code.toLowerCase(java.util.Locale.ROOT)));
            assertThat(done.location()).isEqualTo("/sign-in?ready");
            isDone(user, code);
            start.print();
            assertThat(PRINTED.matcher(output.toString()
                                    .substring(output.toString().lastIndexOf(code)))
                            .results())
                    .isEmpty();
        }

        private void refusesWhatIsWrong(WebUser user, String code) {
            WebPage page = user.get("/setup");
            WebPage.WebForm form = filled(page, code);
            assertThat(user.submit(form.with("zone", "Mars/Olympus")).text()).contains("Choose the zone");
            assertThat(user.submit(form.with("passwordAgain", "other")).text()).contains("The two passwords differ");
            assertThat(user.submit(form.with("printedName", "Ines\u0007")).text())
                    .contains("Leave out character 5");
            assertThat(user.submit(form.with("password", "short").with("passwordAgain", "short"))
                            .text())
                    .contains("12 characters or more");
            WebPage marked =
                    user.submit(form.with("labName", "<script>x</script>").with("zone", ""));
            assertThat(marked.status()).isEqualTo(422);
            assertThat(marked.document().select("main script")).isEmpty();
            assertThat(marked.document().select("#labName").val()).isEqualTo("<script>x</script>");
            assertThat(setUp.isNeeded()).isTrue();
            assertThat(labs.theLab().name()).isEqualTo("Robot lab");
        }

        private void pausesAfterFiveWrongCodes(WebUser user, String code) {
            WebPage page = user.get("/setup");
            for (int i = 0; i < 5; i++) {
                assertThat(user.submit(filled(page, "AAAA-AAAA-AAAA-AAAA-AAA" + (i + 2)))
                                .text())
                        .contains("This is not the code.");
            }
            assertThat(user.submit(filled(page, code)).text()).contains("Too many tries.");
            clock.moveBy(Duration.ofMinutes(1));
        }

        private void isDone(WebUser user, String code) throws Exception {
            assertThat(labs.theLab().zone().getId()).isEqualTo("Europe/Berlin");
            assertThat(people.with(Role.ADMINISTRATOR)).hasSize(1);
            assertThat(user.get("/setup").status()).isEqualTo(404);
            assertThat(jdbc.sql("select count(*) from set_up_codes")
                            .query(Integer.class)
                            .single())
                    .isZero();
            user.signIn("ines", "a lamp over tern hall");
            assertThat(user.get("/people").text()).contains("Ines Quarryvale", "Tern Hall Robot Bench");
            neverWorksAgainThoughManyTryAtOnce();
        }

        /** As two instances would that both saw the lab without administrator. */
        private void neverWorksAgainThoughManyTryAtOnce() throws Exception {
            jdbc.sql("delete from set_up_done").update();
            jdbc.sql("delete from person_roles where role = 'ADMINISTRATOR'").update();
            Lab lab = labs.theLab();
            ExecutorService two = Executors.newFixedThreadPool(4);
            try {
                List<Callable<Finished>> asked = java.util.stream.IntStream.range(0, 4)
                        .<Callable<Finished>>mapToObj(i ->
                                () -> new TransactionTemplate(transactions).execute(status -> {
                                    Finished finished = setUp.finish(new FirstAdministrator(
                                            "twin" + i, "Twin " + i, "a lamp over tern hall", lab));
                                    if (!(finished instanceof Finished.Done)) {
                                        status.setRollbackOnly();
                                    }
                                    return finished;
                                }))
                        .toList();
                for (Future<Finished> one : two.invokeAll(asked)) {
                    one.get();
                }
            } finally {
                two.shutdown();
            }
            assertThat(people.with(Role.ADMINISTRATOR)).hasSize(1);
        }
    }

    @Nested
    @OnH2
    @TestPropertySource(properties = "standclear.test.start=first")
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    @TestPropertySource(properties = "standclear.test.start=first")
    class OnPostgresEngine extends Cases {}
}
