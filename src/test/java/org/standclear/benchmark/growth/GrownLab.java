package org.standclear.benchmark.growth;

import java.net.URI;
import java.util.HashMap;
import java.util.List;
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
    private final URI address;
    private final AutoCloseable application;
    private final int size;
    private final Map<String, WebUser> people = new HashMap<>();

    private GrownLab(TestDatabase database, URI address, AutoCloseable application, int size) {
        this.database = database;
        this.address = address;
        this.application = application;
        this.size = size;
    }

    /** A lab that somebody else has started, and stops. */
    static GrownLab at(URI address, TestDatabase database, int size) {
        return new GrownLab(database, address, () -> {}, size);
    }

    /** Plants the past into a demo college that does not run, and starts it. */
    static GrownLab of(TestDatabase database, int size) throws Exception {
        long begin = System.nanoTime();
        PlantedPast.into(database, size);
        System.out.printf(
                Locale.ROOT, "%,d bookings planted in %d s%n", size, (System.nanoTime() - begin) / 1_000_000_000L);
        PackagedApplication application = PackagedApplication.start(database);
        return new GrownLab(database, application.address(), application, size);
    }

    int size() {
        return size;
    }

    TestDatabase database() {
        return database;
    }

    private WebUser person(String login) {
        return people.computeIfAbsent(login, key -> new WebUser(address).signIn(key, DemoCollege.password()));
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

    /** The first address on the page that begins so and has an id behind it, or else the first that is longer. */
    String linkOn(String login, String path, String prefix) {
        List<String> links =
                person(login).get(path).document().select("a[href^=" + prefix + "]").eachAttr("href").stream()
                        .filter(href -> href.length() > prefix.length())
                        .toList();
        return links.stream()
                .filter(href -> href.substring(prefix.length()).matches("[0-9a-f-]{36}.*"))
                .findFirst()
                .or(() -> links.stream().findFirst())
                .orElseThrow(() -> new IllegalStateException("no link to " + prefix + " on " + path));
    }

    /** A new calendar address of the person's: empty for the own bookings, or whose else. */
    String newCalendar(String login, String of) {
        WebPage made = person(login)
                .submit(person(login).get("/me/calendar").form("/me/calendar").with("of", of));
        return URI.create(made.document().select("code.token").text()).getPath();
    }

    @Override
    public void close() throws Exception {
        application.close();
    }
}
