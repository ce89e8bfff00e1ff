package org.standclear.benchmark.burst;

import java.net.URI;
import java.time.Clock;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.jdbc.datasource.DriverManagerDataSource;
import org.standclear.benchmark.Engine;
import org.standclear.benchmark.PackagedApplication;
import org.standclear.benchmark.Timings;
import org.standclear.benchmark.burst.OpenLoad.Outcome;
import org.standclear.benchmark.burst.OpeningCrowd.Member;

/**
 * The burst of the design: so many requests a second for so long, at fixed instants, on PostgreSQL with two instances of
 * the application. Rate, seconds and people by {@code -Dbenchmark.rate}, {@code .seconds} and {@code .people}.
 */
public final class BurstBenchmark {

    private static final int WARM_UP_SECONDS = 30;
    private static final int SLOTS_FOR_OTHERS = 150;

    private final int rate = Integer.getInteger("benchmark.rate", 200);
    private final int seconds = Integer.getInteger("benchmark.seconds", 60);
    private final JdbcClient jdbc;
    private final List<PackagedApplication> applications;
    private final ClaimTally tally = new ClaimTally();

    private BurstBenchmark(JdbcClient jdbc, List<PackagedApplication> applications) {
        this.jdbc = jdbc;
        this.applications = applications;
    }

    /** Measures; fails when a slot was given twice, or a booking is there that nobody was told of, or the reverse. */
    public static void run() throws Exception {
        try (Engine engine = Engine.postgresql();
                PackagedApplication first = PackagedApplication.start(engine.database());
                PackagedApplication second = PackagedApplication.start(engine.database())) {
            var database = engine.database();
            JdbcClient jdbc = JdbcClient.create(
                    new DriverManagerDataSource(database.url(), database.user(), database.password()));
            new BurstBenchmark(jdbc, List.of(first, second)).measure();
        }
    }

    private List<URI> addresses() {
        return applications.stream().map(PackagedApplication::address).toList();
    }

    private void measure() throws Exception {
        List<URI> addresses = addresses();
        OpeningSlots slots = new OpeningSlots(addresses.get(0), LocalDate.now(Clock.systemUTC()));
        List<Member> crowd = new OpeningCrowd(jdbc, addresses)
                .gathered(
                        Math.max(OpeningTime.IN_A_RUSH + 10, Integer.getInteger("benchmark.people", 200)),
                        slots.others(1).get(0));
        OpeningTime opening = new OpeningTime(crowd, slots, SLOTS_FOR_OTHERS, tally);
        System.out.printf(
                Locale.ROOT,
                "%nburst on PostgreSQL, %d instances, %d people, %d requests/s for %d s at fixed instants%n%n%s%n",
                applications.size(),
                crowd.size(),
                rate,
                seconds,
                Timings.head());
        warmUp(crowd, slots.days());
        Visitor stranger = new Visitor(addresses, "");
        Outcome plainest = OpenLoad.run(OpeningTime.plainest(stranger, rate, seconds));
        print(plainest);
        int before = bookings();
        Outcome burst = OpenLoad.run(opening.arrivals(rate, seconds));
        print(burst);
        System.out.println(burst.all().row("**everything**"));
        tell(plainest, burst);
        judge(opening, bookings() - before, burst.unanswered());
    }

    /** At half the rate, pages only: what a server does in its first minute, while it is being compiled, is not meant. */
    private void warmUp(List<Member> crowd, List<String> days) throws InterruptedException {
        int half = Math.max(1, rate / 2);
        List<OpenLoad.Arrival> arrivals = new java.util.ArrayList<>();
        for (int i = 0; i < half * WARM_UP_SECONDS; i++) {
            Visitor who = crowd.get(i % crowd.size()).visitor();
            String path = i % 3 == 0 ? "/today" : days.get(i % days.size());
            arrivals.add(new OpenLoad.Arrival(
                    java.time.Duration.ofNanos(i * 1_000_000_000L / half),
                    "warm-up",
                    () -> who.get(path).thenApply(answer -> "")));
        }
        OpenLoad.run(arrivals);
    }

    private static void print(Outcome outcome) {
        outcome.kinds().forEach((kind, timings) -> System.out.println(timings.row(kind)));
        if (!outcome.faults().isEmpty()) {
            System.out.println("faults: " + outcome.faults());
        }
    }

    private void tell(Outcome plainest, Outcome burst) throws Exception {
        System.out.printf(
                Locale.ROOT,
                "%nasked %d /s, answered %.1f /s (plainest page %.1f /s); sent at most %d ms after the planned instant;"
                        + " accepted %d, refused by status %s%n",
                rate,
                burst.all().perSecond(),
                plainest.all().perSecond(),
                burst.latest().toMillis(),
                tally.accepted(),
                tally.refused());
        for (PackagedApplication application : applications) {
            System.out.println("memory at most " + application.mostResidentMiB() + " MiB");
        }
    }

    private int bookings() {
        return count("select count(*) from bookings");
    }

    private int count(String sql) {
        return jdbc.sql(sql).query(Integer.class).single();
    }

    /** Who got no answer may have got the slot: so many bookings more than accepted answers are no fault. */
    private void judge(OpeningTime opening, int made, int unanswered) {
        int twice = count("""
                select count(*) from booking_claims a join booking_claims b on a.subject = b.subject and a.id < b.id
                    and a.starts_at < b.ends_at and b.starts_at < a.ends_at""");
        List<Integer> winners =
                opening.rushSlots().stream().map(tally::winnersOf).toList();
        System.out.println("bookings made: " + made + ", requests without an answer: " + unanswered
                + "; claims on instants that another has: " + twice + "; winners of each of the rushes' slots: "
                + winners);
        boolean told = made >= tally.accepted() && made <= tally.accepted() + unanswered;
        boolean one = winners.stream().allMatch(count -> count == 1 || count == 0 && unanswered > 0);
        if (twice != 0 || !told || !one) {
            throw new IllegalStateException("a slot was given twice, or not to the one who was told so");
        }
    }
}
