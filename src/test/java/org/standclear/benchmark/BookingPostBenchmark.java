package org.standclear.benchmark;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.standclear.testing.web.WebUser;

/** Measures the booking form sent by fifty people at once, each for another slot, beside the plainest page. */
final class BookingPostBenchmark {

    private static final int ROUNDS = 2;
    private static final int SERIES = 3;

    private BookingPostBenchmark() {}

    static void run(Engine engine) throws Exception {
        int people = PagesBenchmark.PEOPLE;
        try (engine;
                PackagedApplication application = PackagedApplication.start(engine.database())) {
            BookingForms forms = new BookingForms(application.address(), people, ROUNDS * (SERIES + 1));
            List<WebUser> strangers = new ArrayList<>();
            for (int i = 0; i < people; i++) {
                strangers.add(new WebUser(application.address()));
            }
            System.out.println("\nbooking by " + people + " at once on " + engine.name() + "\n\n" + Timings.head());
            Load.run(people, ROUNDS, (who, round) -> forms.send(who, round));
            List<Double> ratios = new ArrayList<>();
            for (int series = 1; series <= SERIES; series++) {
                int first = series * ROUNDS;
                Timings plainest = Load.run(
                        people,
                        ROUNDS,
                        (who, round) -> strangers.get(who).get("/sign-in").status() == 200);
                Timings booking = Load.run(people, ROUNDS, (who, round) -> forms.send(who, first + round));
                System.out.println(plainest.row("sign-in page, " + engine.name()));
                System.out.println(booking.row("booking form sent, " + engine.name()));
                ratios.add(booking.perSecond() / plainest.perSecond());
            }
            ratios.sort(null);
            System.out.printf(
                    Locale.ROOT,
                    "%nbooking at %.2f of the throughput of the sign-in page (median of %d), memory %d MiB, at most %d MiB%n",
                    ratios.get(SERIES / 2),
                    SERIES,
                    application.residentMiB(),
                    application.mostResidentMiB());
        }
    }
}
