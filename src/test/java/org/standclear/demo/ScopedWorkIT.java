package org.standclear.demo;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import ch.qos.logback.classic.Level;
import ch.qos.logback.classic.Logger;
import ch.qos.logback.classic.spi.ILoggingEvent;
import ch.qos.logback.core.read.ListAppender;
import java.lang.reflect.Method;
import java.time.Duration;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.slf4j.LoggerFactory;
import org.springframework.aop.support.AopUtils;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.scheduling.annotation.Scheduled;
import org.springframework.util.ReflectionUtils;
import org.standclear.cell.Cell;
import org.standclear.cell.Cells;
import org.standclear.people.People;
import org.standclear.people.PeopleRegister;
import org.standclear.people.PeopleRegister.NewPerson;
import org.standclear.people.PeopleRegister.Password;
import org.standclear.platform.lab.Lab;
import org.standclear.platform.lab.Labs;
import org.standclear.platform.security.Role;
import org.standclear.testing.MovableClock;
import org.standclear.testing.TestDatabase;
import org.standclear.testing.web.WebPage;
import org.standclear.testing.web.WebUser;

/** With two labs nothing that the application does by itself is done outside of a lab's scope, and no change can be. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class ScopedWorkIT {

    private static final Instant WEDNESDAY_NOON = Instant.parse("2026-03-11T12:03:00Z");

    private final ListAppender<ILoggingEvent> log = new ListAppender<>();
    private DemoAt demo;

    @BeforeAll
    void startTheDemo() {
        demo = DemoAt.start(
                WEDNESDAY_NOON,
                TestDatabase.freshH2(),
                "--standclear.labs.refuse-outside-of-scope=true",
                "--standclear.lapses.by-themselves=true",
                "--standclear.disposals.by-themselves=true");
    }

    @AfterAll
    void stop() {
        demo.close();
    }

    @BeforeEach
    void listen() {
        log.list.clear();
        log.start();
        logger().addAppender(log);
    }

    @AfterEach
    void listenNoMore() {
        logger().detachAppender(log);
    }

    private static Logger logger() {
        return (Logger) LoggerFactory.getLogger("org.standclear");
    }

    private List<String> errors() {
        return List.copyOf(log.list).stream()
                .filter(event -> event.getLevel().isGreaterOrEqual(Level.ERROR))
                .map(ILoggingEvent::getFormattedMessage)
                .toList();
    }

    private Lab lab(String nameBegins) {
        return demo.the(Labs.class).all().stream()
                .filter(lab -> lab.name().startsWith(nameBegins))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void everyRoundWorksForBothLabs() throws Exception {
        demo.the(MovableClock.class).moveBy(Duration.ofDays(2));
        int rounds = 0;
        for (Object bean : beans()) {
            Class<?> type = AopUtils.getTargetClass(bean);
            for (Method method : ReflectionUtils.getUniqueDeclaredMethods(type)) {
                if (method.isAnnotationPresent(Scheduled.class)) {
                    method.setAccessible(true);
                    method.invoke(bean);
                    rounds++;
                }
            }
        }

        assertThat(rounds).isGreaterThan(6);
        assertThat(errors()).isEmpty();
        for (String name : List.of("Tern Hall", "Saltgrass")) {
            assertThat(missedSince(lab(name)))
                    .as("bookings given up in " + name)
                    .isPositive();
        }
    }

    private List<Object> beans() {
        List<Object> beans = new ArrayList<>();
        for (String name : demo.application().getBeanDefinitionNames()) {
            if (demo.application().getBeanFactory().getBeanDefinition(name).isSingleton()
                    && demo.application().getType(name) != null
                    && String.valueOf(demo.application().getType(name)).contains("org.standclear")) {
                beans.add(demo.application().getBean(name));
            }
        }
        return beans;
    }

    private int missedSince(Lab lab) {
        return demo.the(JdbcClient.class)
                .sql("select count(*) from bookings where lab_id = :lab and state = 'MISSED' and ends_at > :start")
                .param("lab", lab.id().value())
                .param("start", OffsetDateTime.ofInstant(WEDNESDAY_NOON, ZoneOffset.UTC))
                .query(Integer.class)
                .single();
    }

    @Test
    void aChangeOutsideOfAnyScopeIsRefusedAndLogged() {
        NewPerson nobodys = new NewPerson(
                "nobodys", "Nobody Inparticular", Set.of(Role.STUDENT), new Password.Hashed("{never}"), null);

        assertThatThrownBy(() -> demo.the(PeopleRegister.class).add(nobodys))
                .isInstanceOf(IllegalStateException.class)
                .hasMessageContaining("outside of any lab's scope");

        assertThat(demo.the(People.class).byLogin("nobodys")).isEmpty();
        assertThat(errors()).singleElement().asString().contains("nobody can tell for which lab");
    }

    @Test
    void readingOutsideOfAnyScopeShowsTheFirstLab() {
        assertThat(demo.the(Cells.class).all())
                .extracting(Cell::name)
                .contains("Avocet")
                .doesNotContain("Gannet");
        assertThat(errors()).isEmpty();
    }

    @Test
    void everybodySignsInAndWorksInTheirLab() {
        String password = demo.the(DemoAccounts.class).password();
        for (String login : List.of("sorrel", "oriel", "noor", "adaeze", "marit", "rosalind", "halima.sableton")) {
            WebUser user = demo.visitor().signIn(login, password);
            assertThat(user.follow(user.get("/")).status()).as(login).isEqualTo(200);
        }
        WebUser sorrel = demo.visitor().signIn("sorrel", password);
        WebPage form = sorrel.get("/incidents/near-miss");
        String cell = form.document().select("input[name=cell]").attr("value");
        WebPage sent = sorrel.submit(form.form("/incidents/near-miss")
                .with("cell", cell)
                .with("sentence", "A cable lay across the stairs.")
                .with("signed", "yes"));

        assertThat(sorrel.follow(sent).status()).isEqualTo(200);
        assertThat(demo.the(JdbcClient.class)
                        .sql("select lab_id from incidents where sentence = 'A cable lay across the stairs.'")
                        .query(UUID.class)
                        .list())
                .containsExactly(lab("Saltgrass").id().value());
        assertThat(errors()).isEmpty();
    }
}
