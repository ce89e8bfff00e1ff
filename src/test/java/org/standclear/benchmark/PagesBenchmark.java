package org.standclear.benchmark;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.standclear.testing.DemoCollege;
import org.standclear.testing.web.WebPage;
import org.standclear.testing.web.WebUser;

/** Measures Today under fifty people at once beside the plainest page, and the memory the application has then. */
final class PagesBenchmark {

    static final int PEOPLE = 50;
    private static final int ROUNDS = 20;
    private static final int SERIES = 5;

    private PagesBenchmark() {}

    static void run(Engine engine) throws Exception {
        try (engine;
                PackagedApplication application = PackagedApplication.start(engine.database())) {
            List<WebUser> strangers = new ArrayList<>();
            List<WebUser> people = new ArrayList<>();
            for (String login : DemoCollege.logins("STUDENT").subList(0, PEOPLE)) {
                strangers.add(new WebUser(application.address()));
                people.add(new WebUser(application.address()).signIn(login, DemoCollege.password()));
            }
            System.out.println("\n" + PEOPLE + " at once on " + engine.name() + "\n\n" + Timings.head());
            Load.run(PEOPLE, ROUNDS, (who, round) -> isPage(strangers.get(who).get("/sign-in"), "Sign in"));
            Load.run(PEOPLE, ROUNDS, (who, round) -> isPage(people.get(who).get("/today"), "Today"));
            List<Double> ratios = new ArrayList<>();
            for (int series = 0; series < SERIES; series++) {
                Timings plainest = Load.run(
                        PEOPLE,
                        ROUNDS,
                        (who, round) -> isPage(strangers.get(who).get("/sign-in"), "Sign in"));
                Timings today = Load.run(
                        PEOPLE, ROUNDS, (who, round) -> isPage(people.get(who).get("/today"), "Today"));
                System.out.println(plainest.row("sign-in page, " + engine.name()));
                System.out.println(today.row("Today, " + engine.name()));
                ratios.add(today.perSecond() / plainest.perSecond());
            }
            ratios.sort(null);
            System.out.printf(
                    Locale.ROOT,
                    "%nToday at %.2f of the throughput of the sign-in page (median of %d), memory %d MiB, at most %d MiB%n",
                    ratios.get(SERIES / 2),
                    SERIES,
                    application.residentMiB(),
                    application.mostResidentMiB());
        }
    }

    private static boolean isPage(WebPage page, String title) {
        return page.status() == 200 && page.html().contains("<title>" + title);
    }
}
