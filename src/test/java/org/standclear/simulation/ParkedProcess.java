package org.standclear.simulation;

import java.sql.Connection;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import org.jspecify.annotations.Nullable;
import org.springframework.boot.SpringApplication;
import org.springframework.boot.context.TypeExcludeFilter;
import org.springframework.boot.test.context.TestConfiguration;
import org.springframework.context.ConfigurableApplicationContext;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Import;
import org.springframework.context.annotation.Primary;
import org.springframework.core.type.classreading.MetadataReader;
import org.springframework.core.type.classreading.MetadataReaderFactory;
import org.standclear.StandclearApplication;
import org.standclear.booking.Booking;
import org.standclear.booking.BookingState;
import org.standclear.booking.Bookings;
import org.standclear.people.People;
import org.standclear.platform.ids.BookingId;
import org.standclear.signoff.BenchScene;
import org.standclear.signoff.Releases;
import org.standclear.signoff.SignoffRecord;
import org.standclear.testing.MovableClock;

/**
 * A process of its own that walks many bookings towards their close-out, each to another place, and waits there to be
 * killed: between two acts, in the middle of a transaction, or with everything written and nothing committed.
 *
 * <p>First it takes up the bookings that an earlier process left behind, and brings them to their end.
 */
public final class ParkedProcess {

    static final String MARK = "@@ ";
    private static final int[] STATEMENTS = {4, 12};

    private ParkedProcess() {}

    /** Arguments: the step at whose commit one booking waits; then the bookings that were left behind. */
    public static void main(String[] args) throws InterruptedException {
        SpringApplication application = new SpringApplication(StandclearApplication.class, Beans.class);
        application.addInitializers(
                started -> started.getBeanFactory().registerSingleton("withoutTests", new WithoutTests()));
        // pages and rounds have no part in what is walked through here, so they are not made
        ConfigurableApplicationContext context = application.run(
                "--spring.datasource.url=" + System.getProperty("database.url"),
                "--spring.datasource.username=" + System.getProperty("database.user"),
                "--spring.datasource.hikari.maximum-pool-size=60",
                "--server.port=0",
                "--spring.main.banner-mode=off",
                "--spring.main.lazy-initialization=true",
                "--logging.level.root=error");
        BenchScene first = new BenchScene(context);
        for (int i = 1; i < args.length; i++) {
            takeUp(context, first, BookingId.of(args[i]));
        }
        say("TAKEN-UP");
        if (args[0].equals("none")) {
            return;
        }
        park(context, Lane.Step.valueOf(args[0]));
        say("PARKED");
        new CountDownLatch(1).await();
    }

    private static void takeUp(ConfigurableApplicationContext context, BenchScene any, BookingId id) {
        Booking booking = context.getBean(Bookings.class).find(id).orElseThrow();
        People people = context.getBean(People.class);
        Lane lane = new Lane(
                context,
                any.at(
                        id,
                        people.find(booking.operator()).orElseThrow(),
                        people.find(java.util.Objects.requireNonNull(booking.attendant()))
                                .orElseThrow()));
        while (lane.scene().state() != BookingState.CLOSED_OUT) {
            Lane.Step due = lane.due();
            lane.prepare(due);
            lane.act(due);
        }
        say("ENDED " + id + " " + lane.scene().state());
    }

    private static void park(ConfigurableApplicationContext context, Lane.Step atCommit) throws InterruptedException {
        List<Parking> wanted = new ArrayList<>();
        for (Lane.Step step : Lane.Step.values()) {
            wanted.add(new Parking(step, 0));
            for (int statement : STATEMENTS) {
                wanted.add(new Parking(step, statement));
            }
        }
        List<Lane> lanes = new ArrayList<>();
        for (int i = 0; i <= wanted.size(); i++) {
            lanes.add(new Lane(context, new BenchScene(context)));
        }
        for (int i = 0; i < wanted.size(); i++) {
            walk(context, lanes.get(i), wanted.get(i));
        }
        // last of all: whoever stands at the commit holds the lock of the record
        walk(context, lanes.get(wanted.size()), new Parking(atCommit, Parking.COMMIT));
    }

    /** Walks to the place; returns when the booking waits there. */
    private static void walk(ConfigurableApplicationContext context, Lane lane, Parking place)
            throws InterruptedException {
        acknowledge(context, lane);
        for (Lane.Step step : Lane.Step.values()) {
            if (step == place.step) {
                lane.prepare(step);
                acknowledge(context, lane);
                if (place.statement != 0) {
                    Thread parked = new Thread(() -> place.actAndWait(context, lane), "lane at " + step);
                    parked.setDaemon(true);
                    parked.start();
                    if (!place.reached.await(60, TimeUnit.SECONDS)) {
                        throw new IllegalStateException("never came to " + step + " " + place.statement);
                    }
                }
                return;
            }
            lane.prepare(step);
            lane.act(step);
        }
    }

    /** What the process has told its people; none of it may be lost. */
    private static void acknowledge(ConfigurableApplicationContext context, Lane lane) {
        BookingId id = lane.scene().booking;
        long signatures = context.getBean(SignoffRecord.class).sheets(id).stream()
                .mapToLong(sheet -> sheet.signatures().size())
                .sum();
        int releases = context.getBean(Releases.class).of(id).size();
        say("ACK " + id + " " + lane.scene().state() + " " + signatures + " " + releases);
    }

    private static synchronized void say(String words) {
        System.out.println(MARK + words);
        System.out.flush();
    }

    /** A place to wait: before the statement of that number of the step's act; 0 is before the act. */
    private static final class Parking {

        private static final int COMMIT = -1;
        private static final ThreadLocal<Parking> MINE = new ThreadLocal<>();

        private final Lane.Step step;
        private final int statement;
        private final CountDownLatch reached = new CountDownLatch(1);
        private int seen;

        private Parking(Lane.Step step, int statement) {
            this.step = step;
            this.statement = statement;
        }

        private void actAndWait(ConfigurableApplicationContext context, Lane lane) {
            MINE.set(this);
            lane.act(step);
            MINE.remove();
            // the act had fewer statements: it is done, and the booking waits after it
            acknowledge(context, lane);
            reached.countDown();
        }

        private void at(boolean commit) {
            boolean here = commit ? statement == COMMIT : ++seen == statement;
            if (here) {
                reached.countDown();
                try {
                    new CountDownLatch(1).await();
                } catch (InterruptedException never) {
                    throw new IllegalStateException(never);
                }
            }
        }
    }

    /** The clock of the tests, and the watch that makes threads wait. */
    @TestConfiguration(proxyBeanMethods = false)
    @Import(NoTurns.class)
    static class Beans {

        @Bean
        @Primary
        MovableClock movableClock() {
            return new MovableClock();
        }

        @Bean
        static WatchedDatabase.Watch parking() {
            return new WatchedDatabase.Watch() {
                @Override
                public void connection(Connection real) {
                    // nobody waits here
                }

                @Override
                public void statement(Connection real) {
                    Parking mine = Parking.MINE.get();
                    if (mine != null) {
                        mine.at(false);
                    }
                }

                @Override
                public void commit(Connection real) throws java.sql.SQLException {
                    Parking mine = Parking.MINE.get();
                    if (mine != null && !real.isReadOnly()) {
                        mine.at(true);
                    }
                    real.commit();
                }
            };
        }
    }

    /** Settings of other tests are no part of the application, although they stand in its packages. */
    private static final class WithoutTests extends TypeExcludeFilter {

        @Override
        public boolean match(MetadataReader type, MetadataReaderFactory factory) {
            return type.getAnnotationMetadata().isAnnotated(TestConfiguration.class.getName());
        }

        @Override
        public boolean equals(@Nullable Object other) {
            return other instanceof WithoutTests;
        }

        @Override
        public int hashCode() {
            return WithoutTests.class.hashCode();
        }
    }
}
