package org.standclear.booking.allocation;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.springframework.boot.builder.SpringApplicationBuilder;
import org.springframework.boot.test.context.TestConfiguration;
import org.springframework.context.ConfigurableApplicationContext;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Primary;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.standclear.StandclearApplication;
import org.standclear.booking.SampleLab;
import org.standclear.cell.Cells;
import org.standclear.core.allocation.Span;
import org.standclear.people.Person;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.security.Role;
import org.standclear.testing.MovableClock;
import org.standclear.testing.RealPostgres;
import org.standclear.testing.TestDatabase;

/**
 * The process that searches is killed (SIGKILL) in the middle, inside the solver. Another instance on the same database shows
 * the search as lost once no sign of life came for half a minute; nothing is booked or planned, and a new search finds a
 * plan that can be accepted.
 */
class KilledSearchIT {

    private static final LocalDate FRIDAY = LocalDate.of(2026, 3, 13);
    private static final Instant EIGHT = Instant.parse("2026-03-13T08:00:00Z");

    private @Nullable ConfigurableApplicationContext application;

    @AfterEach
    void end() {
        if (application != null) {
            application.close();
        }
    }

    private <T> T the(Class<T> type) {
        return Objects.requireNonNull(application).getBean(type);
    }

    @Test
    void leavesALostSearchAndNothingElse() throws Exception {
        TestDatabase database = RealPostgres.freshDatabase();
        List<String> arguments = new ArrayList<>(List.of("--server.port=0"));
        for (String property : database.asProperties()) {
            arguments.add("--" + property);
        }
        application = new SpringApplicationBuilder(StandclearApplication.class, ClockThere.class)
                .run(arguments.toArray(String[]::new));
        SampleLab lab = new SampleLab(Objects.requireNonNull(application));
        Person ines = lab.person("Ines Quarryvale", Role.INSTRUCTOR);
        UUID window = rush(lab, ines);

        Process process = started(database, window, ines);
        assertThat(saysHalfWay(process)).as("the search came half way").isTrue();
        UUID killed = the(Searches.class).of(window).get(0).id();
        // a sign of life after the first plan says how far it is
        for (int i = 0; i < 100 && searched(killed).standing().isEmpty(); i++) {
            Thread.sleep(100);
        }
        assertThat(searched(killed).standing()).isNotEmpty();
        process.destroyForcibly();
        assertThat(process.waitFor()).as("killed").isEqualTo(137);

        assertThat(searched(killed).state()).isEqualTo(Search.State.RUNNING);
        the(MovableClock.class).moveBy(Duration.ofSeconds(31));
        assertThat(searched(killed).state()).isEqualTo(Search.State.LOST);
        assertThat(the(Plans.class).places(killed)).isEmpty();
        assertThat(the(PlanDesk.class).accept(killed, ines.id())).isPresent();
        assertThat(bookings()).isZero();

        SearchDesk.Begun begun = the(SearchDesk.class).begin(window, 1, ines.id());
        UUID again = ((SearchDesk.Begun.Searching) begun).search();
        assertThat(again).isNotEqualTo(killed);
        for (int i = 0; i < 600 && searched(again).endedAt() == null; i++) {
            Thread.sleep(100);
        }
        assertThat(searched(again).state()).isEqualTo(Search.State.FOUND);
        assertThat(the(PlanDesk.class).accept(again, ines.id())).isEmpty();
        assertThat(bookings()).isEqualTo(the(Plans.class).places(again).size()).isPositive();
    }

    private Search searched(UUID id) {
        return the(Searches.class).find(id).orElseThrow();
    }

    private int bookings() {
        return the(JdbcClient.class)
                .sql("select count(*) from bookings")
                .query(Integer.class)
                .single();
    }

    /** More turns than slots, so that the solver has something to look for. */
    private UUID rush(SampleLab lab, Person ines) {
        CellId avocet = lab.cell(0);
        String tool = the(Cells.class).current(avocet).fittedTool();
        UUID window =
                the(Windows.class).open("Rush Friday", FRIDAY, FRIDAY, EIGHT.minus(Duration.ofHours(12)), ines.id());
        Person before = lab.student("Student 0");
        for (int number = 1; number <= 8; number++) {
            Person student = lab.student("Student " + number);
            List<Span> times = List.of(Span.minutes(EIGHT, 180));
            the(TurnRequests.class)
                    .ask(new TurnRequest(
                            UUID.randomUUID(),
                            window,
                            student.id(),
                            before.id(),
                            null,
                            tool,
                            2,
                            false,
                            false,
                            times,
                            times));
            before = student;
        }
        return window;
    }

    private static Process started(TestDatabase database, UUID window, Person by) throws IOException {
        return new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-Xmx400m",
                        "-XX:TieredStopAtLevel=1",
                        "-XX:+UseSerialGC",
                        "-Ddatabase.url=" + database.url(),
                        "-Ddatabase.user=" + database.user(),
                        "-Ddatabase.password=" + database.password(),
                        "-cp",
                        System.getProperty("surefire.test.class.path", System.getProperty("java.class.path")),
                        SearchingProcess.class.getName(),
                        window.toString(),
                        by.id().toString())
                .redirectErrorStream(true)
                .start();
    }

    private static boolean saysHalfWay(Process process) throws IOException {
        BufferedReader said =
                new BufferedReader(new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8));
        for (String line = said.readLine(); line != null; line = said.readLine()) {
            if (line.equals(SearchingProcess.HALF_WAY)) {
                return true;
            }
            System.out.println("  from the process: " + line);
        }
        return false;
    }

    /** The clock of the tests. */
    @TestConfiguration(proxyBeanMethods = false)
    static class ClockThere {

        @Bean
        @Primary
        MovableClock movableClock() {
            return new MovableClock();
        }
    }
}
