package org.standclear.retention;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.standclear.retention.DisposalWaits.Change;
import org.standclear.retention.DisposalWaits.Shorter;
import org.standclear.retention.DisposalWaits.Wait;

/**
 * Which wait holds: a longer one at once, a shorter one only when the days of the one before have passed since. Otherwise
 * whoever approves a list could take the wait away first, and nobody would have time to object.
 */
public final class WaitingTime {

    private WaitingTime() {}

    /** What holds at an instant, by the changes so far, latest first. */
    public static Wait at(Instant now, List<Change> changes) {
        int set = changes.isEmpty() ? DisposalWaits.STANDARD : changes.get(0).days();
        int days = set;
        Instant until = Instant.MIN;
        for (Ended before : ended(changes)) {
            if (before.days() > set && now.isBefore(before.holdsUntil())) {
                days = Math.max(days, before.days());
                until = before.holdsUntil().isAfter(until) ? before.holdsUntil() : until;
            }
        }
        int number = changes.isEmpty() ? 0 : changes.get(0).number();
        return new Wait(days, number, days == set ? Optional.empty() : Optional.of(new Shorter(set, until)));
    }

    /** A wait that was replaced, and how long it still holds. */
    private record Ended(int days, Instant holdsUntil) {}

    private static List<Ended> ended(List<Change> changes) {
        List<Ended> ended = new ArrayList<>();
        for (int i = 0; i < changes.size(); i++) {
            int before = i + 1 < changes.size() ? changes.get(i + 1).days() : DisposalWaits.STANDARD;
            ended.add(new Ended(before, changes.get(i).at().plus(Duration.ofDays(before))));
        }
        return ended;
    }
}
