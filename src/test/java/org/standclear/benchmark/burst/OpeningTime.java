package org.standclear.benchmark.burst;

import java.net.http.HttpResponse;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.concurrent.CompletableFuture;
import org.standclear.benchmark.burst.OpenLoad.Arrival;
import org.standclear.benchmark.burst.OpeningCrowd.Member;

/**
 * What people do when booking opens, from a seed: most look at days and slots, one in eight claims one of the few slots,
 * and six times fifty people press the button for the same four slots at the same instant. The shares are our own guess.
 */
final class OpeningTime {

    static final int RUSHES = 6;
    static final int IN_A_RUSH = 50;

    private static final long SEED = 20261127;

    private final List<Member> rushing;
    private final List<Member> others;
    private final List<List<String>> rushSlots;
    private final List<String> slots;
    private final List<String> days;
    private final ClaimTally tally;
    private final Random chance = new Random(SEED);

    OpeningTime(List<Member> crowd, OpeningSlots slots, int forOthers, ClaimTally tally) {
        rushing = crowd.subList(0, IN_A_RUSH);
        others = crowd.subList(IN_A_RUSH, crowd.size());
        days = slots.days();
        rushSlots = new ArrayList<>();
        for (int rush = 0; rush < RUSHES; rush++) {
            rushSlots.add(slots.takeFour(days.get(rush % days.size())));
        }
        this.slots = slots.others(forOthers);
        this.tally = tally;
    }

    /** The slots of all rushes. */
    List<String> rushSlots() {
        return rushSlots.stream().flatMap(List::stream).toList();
    }

    /** As many arrivals as the rate makes in the time; those of a rush come together, and a pause after them. */
    List<Arrival> arrivals(int rate, int seconds) {
        int count = rate * seconds;
        List<Arrival> arrivals = new ArrayList<>();
        for (int rush = 0; rush < RUSHES; rush++) {
            int begins = (int) ((rush + 0.5) / RUSHES * count);
            while (arrivals.size() < begins) {
                arrivals.add(somebody(at(arrivals.size(), rate)));
            }
            Duration instant = at(arrivals.size(), rate);
            for (int who = 0; who < IN_A_RUSH; who++) {
                String slot = rushSlots.get(rush).get((who + rush) % 4);
                arrivals.add(claim(instant, "one of fifty claims for the same four slots", rushing.get(who), slot));
            }
        }
        while (arrivals.size() < count) {
            arrivals.add(somebody(at(arrivals.size(), rate)));
        }
        return arrivals;
    }

    /** The plainest page at the same instants, for strangers. */
    static List<Arrival> plainest(Visitor stranger, int rate, int seconds) {
        List<Arrival> arrivals = new ArrayList<>();
        for (int i = 0; i < rate * seconds; i++) {
            arrivals.add(page(at(i, rate), "sign-in page", stranger, "/sign-in"));
        }
        return arrivals;
    }

    private static Duration at(int number, int rate) {
        return Duration.ofNanos(number * 1_000_000_000L / rate);
    }

    private Arrival somebody(Duration at) {
        Member who = others.get(chance.nextInt(others.size()));
        int share = chance.nextInt(100);
        if (share < 55) {
            return page(at, "Book", who.visitor(), days.get(chance.nextInt(days.size())));
        }
        if (share < 75) {
            return page(at, "a slot", who.visitor(), slots.get(chance.nextInt(slots.size())));
        }
        if (share < 87) {
            return claim(at, "claim", who, slots.get(chance.nextInt(slots.size())));
        }
        return share < 94 ? page(at, "Today", who.visitor(), "/today") : page(at, "My page", who.visitor(), "/me");
    }

    private static Arrival page(Duration at, String kind, Visitor who, String path) {
        return new Arrival(at, kind, () -> who.get(path).thenApply(OpeningTime::faultOfPage));
    }

    private static String faultOfPage(HttpResponse<String> answer) {
        boolean page = answer.statusCode() == 200 && answer.body().contains("</html>");
        return page ? "" : "status " + answer.statusCode();
    }

    private Arrival claim(Duration at, String kind, Member who, String slot) {
        return new Arrival(at, kind, () -> claimed(who, slot));
    }

    private CompletableFuture<String> claimed(Member who, String slot) {
        return who.visitor()
                .post(OpeningSlots.filledIn(who.form(), slot))
                .thenApply(answer -> tally.take(slot, answer));
    }
}
