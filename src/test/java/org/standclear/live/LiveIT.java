package org.standclear.live;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.springframework.boot.builder.SpringApplicationBuilder;
import org.springframework.context.ConfigurableApplicationContext;
import org.springframework.transaction.PlatformTransactionManager;
import org.springframework.transaction.support.TransactionTemplate;
import org.standclear.StandclearApplication;
import org.standclear.cell.CellRegister;
import org.standclear.cell.CellStates;
import org.standclear.cell.SampleCell;
import org.standclear.people.PeopleRegister;
import org.standclear.people.PeopleRegister.NewPerson;
import org.standclear.people.PeopleRegister.Password;
import org.standclear.people.Person;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.security.Role;
import org.standclear.testing.RealPostgres;
import org.standclear.testing.TestDatabase;
import org.standclear.testing.web.WebUser;

/** Two instances on one PostgreSQL: what is committed on one reaches a listener on the other within a second. */
class LiveIT {

    private static final String PASSWORD = "a quiet bench by the door";
    private static final Duration SOON = Duration.ofSeconds(1);

    private static final List<ConfigurableApplicationContext> INSTANCES = new ArrayList<>();

    @BeforeAll
    static void twoInstances() {
        TestDatabase database = RealPostgres.freshDatabase();
        for (int i = 0; i < 2; i++) {
            List<String> arguments = new ArrayList<>(
                    List.of("--server.port=0", "--standclear.name=live-" + i, "--standclear.live.beat=500ms"));
            for (String property : database.asProperties()) {
                arguments.add("--" + property);
            }
            INSTANCES.add(
                    new SpringApplicationBuilder(StandclearApplication.class).run(arguments.toArray(String[]::new)));
        }
    }

    @AfterAll
    static void stop() {
        INSTANCES.forEach(ConfigurableApplicationContext::close);
        INSTANCES.clear();
    }

    private static int port(int instance) {
        return Integer.parseInt(java.util.Objects.requireNonNull(
                INSTANCES.get(instance).getEnvironment().getProperty("local.server.port")));
    }

    private static <T> T on(int instance, Class<T> type) {
        return INSTANCES.get(instance).getBean(type);
    }

    private static Person person() {
        String login = "live" + UUID.randomUUID().toString().substring(0, 8);
        PeopleRegister.Outcome added = on(0, PeopleRegister.class)
                .add(new NewPerson(
                        login,
                        "Yuki Halfmoon",
                        Set.of(Role.TECHNICIAN),
                        new Password.Hashed(on(0, org.springframework.security.crypto.password.PasswordEncoder.class)
                                .encode(PASSWORD)),
                        null));
        return ((PeopleRegister.Outcome.Done) added).person();
    }

    private static CellId cell() {
        return SampleCell.inForce(on(0, CellRegister.class), SampleCell.name());
    }

    /** Listens on the second instance. */
    private static StreamListener listener(Person person) throws Exception {
        return new StreamListener(port(1), WebUser.atPort(port(1)).signIn(person.login(), PASSWORD));
    }

    @Test
    void reachesTheOtherInstanceWithinASecond() throws Exception {
        CellId avocet = cell();
        Person yuki = person();
        try (StreamListener listener = listener(yuki)) {
            on(0, CellStates.class).hold(avocet, yuki.id(), "odd noise");
            assertThat(listener.hears(avocet, SOON)).isTrue();
        }
    }

    @Test
    void saysNothingOfWhatIsRolledBackAndNothingBeforeTheCommit() throws Exception {
        CellId avocet = cell();
        CellId bittern = cell();
        Person yuki = person();
        try (StreamListener listener = listener(yuki)) {
            TransactionTemplate transaction = new TransactionTemplate(on(0, PlatformTransactionManager.class));
            transaction.executeWithoutResult(status -> {
                on(0, CellStates.class).hold(avocet, yuki.id(), "thought better of it");
                status.setRollbackOnly();
            });
            transaction.executeWithoutResult(status -> {
                on(0, CellStates.class).hold(bittern, yuki.id(), "odd noise");
                try {
                    assertThat(listener.hears(bittern, Duration.ofMillis(700)))
                            .as("nothing is committed yet")
                            .isFalse();
                } catch (InterruptedException stopped) {
                    throw new IllegalStateException(stopped);
                }
            });
            assertThat(listener.hears(bittern, SOON)).isTrue();
            assertThat(listener.hears(avocet, Duration.ofMillis(300))).isFalse();
        }
    }

    @Test
    void givesASignOfLifeNowAndThenAndEndsWithTheAccount() throws Exception {
        Person yuki = person();
        try (StreamListener listener = listener(yuki)) {
            for (int beat = 0; beat < 3; beat++) {
                assertThat(listener.reads(":here", Duration.ofSeconds(3)))
                        .as("beat " + beat)
                        .isTrue();
            }
            assertThat(on(0, PeopleRegister.class).deactivate(yuki.id(), "left the college", person().id()))
                    .isInstanceOf(PeopleRegister.Outcome.Done.class);
            assertThat(listener.reads("closed", Duration.ofSeconds(5)))
                    .as("whoever may no longer sign in hears nothing more")
                    .isTrue();
        }
    }

    @Test
    void isForWhoIsSignedIn() throws Exception {
        HttpResponse<String> answer = HttpClient.newHttpClient()
                .send(
                        HttpRequest.newBuilder(URI.create("http://localhost:" + port(1) + "/live"))
                                .build(),
                        HttpResponse.BodyHandlers.ofString());
        assertThat(answer.statusCode()).isEqualTo(302);
        assertThat(answer.headers().firstValue("Location").orElseThrow()).contains("/sign-in");
    }

    @Test
    void letsTheOldestOfAPersonsStreamsGiveWay() throws Exception {
        CellId avocet = cell();
        Person yuki = person();
        List<StreamListener> open = new ArrayList<>();
        try {
            for (int i = 0; i < 9; i++) {
                open.add(listener(yuki));
            }
            on(0, CellStates.class).hold(avocet, yuki.id(), "odd noise");
            assertThat(open.get(8).hears(avocet, SOON)).isTrue();
            assertThat(open.get(1).hears(avocet, SOON)).isTrue();
            assertThat(open.get(0).hears(avocet, Duration.ofMillis(300)))
                    .as("the first was ended")
                    .isFalse();
        } finally {
            for (StreamListener one : open) {
                one.close();
            }
        }
    }

    @Test
    void comesBackAfterTheDatabaseCutTheConnection() throws Exception {
        CellId avocet = cell();
        Person yuki = person();
        try (StreamListener listener = listener(yuki)) {
            on(0, org.springframework.jdbc.core.simple.JdbcClient.class)
                    .sql("select pg_terminate_backend(pid) from pg_stat_activity where datname = current_database()"
                            + " and application_name = 'standclear live'")
                    .query((row, number) -> 0)
                    .list();
            String line = listener.next(Duration.ofSeconds(10));
            while (line != null && !line.equals("data:all")) {
                line = listener.next(Duration.ofSeconds(10));
            }
            assertThat(line).as("everybody looks again").isEqualTo("data:all");
            PersonId by = yuki.id();
            on(0, CellStates.class).hold(avocet, by, "odd noise");
            assertThat(listener.hears(avocet, SOON)).isTrue();
        }
    }
}
