package org.standclear.booking.allocation;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.standclear.platform.ids.PersonId;

/**
 * Somebody whom a plan keeps long at the e-stop on one day. A plan sets no limit to attending; who accepts it is told. The
 * numbers are a usual way of working, no limit from a standard and no promise that a shorter watch is without danger.
 *
 * @param inARow turns without a pause between them, the most of the day
 * @param inAll length of all turns that they attend on the day
 */
public record LongWatch(PersonId person, LocalDate day, int inARow, Duration inAll) {

    /** Two hours of half-hour slots: nobody stays attentive to what hardly ever happens for longer without a break. */
    public static final int MOST_IN_A_ROW = 4;

    /** Half a working day. */
    public static final Duration MOST_IN_A_DAY = Duration.ofHours(4);

    /** Less goes into walking to the next cell and its session list. */
    public static final Duration PAUSE = Duration.ofMinutes(15);

    /**
     * Those of a plan, by day, then by the person's first turn.
     *
     * @param dayOf the lab's date of an instant
     */
    public static List<LongWatch> in(List<PlannedTurn> plan, Function<Instant, LocalDate> dayOf) {
        Map<LocalDate, Map<PersonId, List<PlannedTurn>>> attended = plan.stream()
                .sorted(Comparator.comparing(PlannedTurn::start))
                .collect(Collectors.groupingBy(
                        turn -> dayOf.apply(turn.start()),
                        TreeMap::new,
                        Collectors.groupingBy(PlannedTurn::attendant, LinkedHashMap::new, Collectors.toList())));
        List<LongWatch> found = new ArrayList<>();
        attended.forEach((day, people) ->
                people.forEach((person, turns) -> of(person, day, turns).ifPresent(found::add)));
        return found;
    }

    private static Optional<LongWatch> of(PersonId person, LocalDate day, List<PlannedTurn> byStart) {
        Duration inAll = Duration.ZERO;
        int row = 0;
        int longest = 0;
        Instant before = Instant.MIN;
        for (PlannedTurn turn : byStart) {
            boolean rested = before.equals(Instant.MIN)
                    || Duration.between(before, turn.start()).compareTo(PAUSE) >= 0;
            row = rested ? 1 : row + 1;
            longest = Math.max(longest, row);
            inAll = inAll.plus(Duration.between(turn.start(), turn.end()));
            before = turn.end();
        }
        return longest > MOST_IN_A_ROW || inAll.compareTo(MOST_IN_A_DAY) > 0
                ? Optional.of(new LongWatch(person, day, longest, inAll))
                : Optional.empty();
    }

    /** "6 turns in a row, 3 h 30 min in all". */
    public String words() {
        long minutes = inAll.toMinutes();
        String length = minutes / 60 + " h" + (minutes % 60 == 0 ? "" : " " + minutes % 60 + " min");
        return inARow + (inARow == 1 ? " turn" : " turns") + " in a row at most, " + length + " in all";
    }
}
