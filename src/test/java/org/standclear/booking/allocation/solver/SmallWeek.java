package org.standclear.booking.allocation.solver;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import org.standclear.core.allocation.Attendant;
import org.standclear.core.allocation.Bench;
import org.standclear.core.allocation.FreeSlot;
import org.standclear.core.allocation.Placed;
import org.standclear.core.allocation.Problem;
import org.standclear.core.allocation.Span;
import org.standclear.core.allocation.Times;
import org.standclear.core.allocation.Turn;
import org.standclear.core.allocation.Wish;
import org.standclear.core.allocation.Work;

/**
 * Problems small enough to try every plan: five turns, five slots, pairs, longer turns, two tools on a cell, bookings that
 * stand, all by chance.
 */
final class SmallWeek {

    private static final Instant EIGHT = Instant.parse("2026-11-16T08:00:00Z");
    private static final Span ALL_DAY = Span.minutes(EIGHT, 600);

    private SmallWeek() {}

    static Problem problem(long seed) {
        Random chance = new Random(seed);
        List<FreeSlot> slots = new ArrayList<>();
        for (int slot = 0; slot < 3; slot++) {
            slots.add(new FreeSlot("Avocet", Span.minutes(EIGHT.plusSeconds(1800L * slot), 30)));
        }
        slots.add(new FreeSlot("Bittern", Span.minutes(EIGHT.plusSeconds(420), 30)));
        slots.add(new FreeSlot("Bittern", Span.minutes(EIGHT.plusSeconds(420 + 1800), 30)));
        List<Turn> turns = new ArrayList<>();
        for (int number = 0; number < 5; number++) {
            turns.add(turn(number, chance, slots));
        }
        List<Attendant> attendants = List.of(
                new Attendant("a", Set.of("Avocet"), List.of(), false),
                new Attendant("b", Set.of("Avocet", "Bittern"), List.of(ALL_DAY), false),
                new Attendant("t", Set.of("Avocet", "Bittern"), List.of(Span.minutes(EIGHT, 45)), true));
        return new Problem(
                List.of(
                        new Bench("Avocet", Set.of("G", "V"), "G", Set.of()),
                        new Bench("Bittern", Set.of("G"), "G", Set.of("low"))),
                slots,
                attendants,
                turns,
                Map.of("a", 1, "b", 2, "c", 1),
                chance.nextBoolean() ? Map.of("c", List.of(Span.minutes(EIGHT, 20))) : Map.of(),
                List.of());
    }

    private static Turn turn(int number, Random chance, List<FreeSlot> slots) {
        String operator = String.valueOf("abc".charAt(chance.nextInt(3)));
        String partner = operator.equals("c") && chance.nextBoolean() ? "a" : null;
        Work work = new Work(
                chance.nextInt(3) == 0 ? "V" : "G", chance.nextInt(4) == 0 ? 45 : 30, Set.of(), chance.nextInt(6) == 0);
        List<Span> canCome = chance.nextBoolean() ? List.of(ALL_DAY) : List.of(Span.minutes(EIGHT, 60));
        FreeSlot liked = slots.get(chance.nextInt(slots.size()));
        List<Wish> wishes = List.of(new Wish(liked.cell(), liked.span()), new Wish(null, Span.minutes(EIGHT, 60)));
        Placed standing = chance.nextInt(4) == 0 && work.minutes() == 30
                ? new Placed("t" + number, liked.cell(), liked.span(), "b")
                : null;
        return new Turn(
                "t" + number,
                operator,
                partner,
                work,
                new Times(ALL_DAY, canCome, wishes),
                chance.nextInt(4) == 0,
                standing);
    }
}
