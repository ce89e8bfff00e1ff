package org.standclear.benchmark.growth;

import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import org.standclear.benchmark.PackagedApplication;
import org.standclear.testing.DemoCollege;
import org.standclear.testing.TestDatabase;
import org.standclear.testing.web.WebPage;
import org.standclear.testing.web.WebUser;

/** A demo college with a past of so many bookings, running, with people signed in. */
final class GrownLab implements AutoCloseable {

    private final TestDatabase database;
    private final PackagedApplication application;
    private final int size;
    private final Map<String, WebUser> people = new HashMap<>();

    private GrownLab(TestDatabase database, PackagedApplication application, int size) {
        this.database = database;
        this.application = application;
        this.size = size;
    }

    /** Plants the past into a demo college that does not run, and starts it. */
    static GrownLab of(TestDatabase database, int size) throws Exception {
        long begin = System.nanoTime();
        PlantedPast.into(database, size);
        System.out.printf(
                Locale.ROOT, "%,d bookings planted in %d s%n", size, (System.nanoTime() - begin) / 1_000_000_000L);
        return new GrownLab(database, PackagedApplication.start(database), size);
    }

    int size() {
        return size;
    }

    TestDatabase database() {
        return database;
    }

    private WebUser person(String login) {
        return people.computeIfAbsent(
                login, key -> new WebUser(application.address()).signIn(key, DemoCollege.password()));
    }

    /** Nanoseconds until the last byte of the page; fails when it is none. */
    long time(GrowthPage page) {
        String path = page.path().of(this);
        WebUser who = person(page.login());
        long begin = System.nanoTime();
        WebPage answer = who.get(path);
        long nanos = System.nanoTime() - begin;
        if (answer.status() != 200) {
            throw new IllegalStateException(
                    page.name() + " for " + page.login() + " at " + path + ": " + answer.status());
        }
        return nanos;
    }

    /** The first address on the page that begins so and is longer. */
    String linkOn(String login, String path, String prefix) {
        return person(login).get(path).document().select("a[href^=" + prefix + "]").eachAttr("href").stream()
                .filter(href -> href.length() > prefix.length())
                .findFirst()
                .orElseThrow(() -> new IllegalStateException("no link to " + prefix + " on " + path));
    }

    @Override
    public void close() throws InterruptedException {
        application.close();
    }
}
