package org.standclear.demo;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Comparator;
import java.util.PriorityQueue;
import java.util.function.Consumer;
import org.standclear.platform.time.ClockHands;

/** Acts of the demo's past in the order of time; each is done while the application's clock stands at its instant. */
final class Timeline {

    private final PriorityQueue<Entry> entries =
            new PriorityQueue<>(Comparator.comparing(Entry::at).thenComparing(Entry::number));
    private final ClockHands hands;
    private final DemoPace pace;
    private final ZoneId zone;
    private final Consumer<Runnable> transaction;
    private int count;

    Timeline(ClockHands hands, DemoPace pace, ZoneId zone, Consumer<Runnable> transaction) {
        this.hands = hands;
        this.pace = pace;
        this.zone = zone;
        this.transaction = transaction;
    }

    void add(Instant at, Runnable act) {
        entries.add(new Entry(at, count++, act));
    }

    /** Plays everything up to the instant, one transaction a day; acts may add later ones. The rest never happens. */
    void playUntil(Instant end) {
        pace.noLaterThan(end);
        while (hasNext(end)) {
            LocalDate day = date(entries.element().at());
            transaction.accept(() -> {
                while (hasNext(end) && date(entries.element().at()).equals(day)) {
                    Entry next = entries.remove();
                    pace.goOnAt(next.at());
                    run(next);
                }
            });
        }
        hands.standAt(end);
    }

    private static void run(Entry entry) {
        try {
            entry.act().run();
        } catch (RuntimeException wrongScript) {
            throw new IllegalStateException("the demo's script at " + entry.at(), wrongScript);
        }
    }

    private boolean hasNext(Instant end) {
        return !entries.isEmpty() && !entries.element().at().isAfter(end);
    }

    private LocalDate date(Instant at) {
        return at.atZone(zone).toLocalDate();
    }

    private record Entry(Instant at, int number, Runnable act) {}
}
