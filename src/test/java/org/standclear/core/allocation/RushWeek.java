package org.standclear.core.allocation;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;

/**
 * Windows with people who ask for turns, made by chance from a seed: some in pairs, some alone, some with longer turns
 * or needs, with times of their own.
 *
 * @param people who ask
 * @param turnsEach how many turns each asks for
 * @param cells cells; every other one also carries a second tool
 * @param slotsPerCell slots of each cell, nine a day
 */
public record RushWeek(int people, int turnsEach, int cells, int slotsPerCell, long seed) {

    public static final Instant OPENS = Instant.parse("2026-11-16T08:00:00Z");
    public static final Duration SLOT = Duration.ofMinutes(30);

    private static final int SLOTS_A_DAY = 9;
    private static final String[] TOOLS = {"G-02", "V-01"};

    /** The size that a college of 81 students has. */
    public static RushWeek college(long seed) {
        return new RushWeek(81, 4, 4, 90, seed);
    }

    /** Five times that. */
    public static RushWeek stress(long seed) {
        return new RushWeek(400, 4, 12, 90, seed);
    }

    public Problem problem() {
        Random chance = new Random(seed);
        List<Bench> benches = new ArrayList<>();
        List<FreeSlot> slots = new ArrayList<>();
        for (int cell = 0; cell < cells; cell++) {
            Set<String> tools = cell % 2 == 0 ? Set.of("G-02") : Set.of("G-02", "V-01");
            benches.add(new Bench("cell-" + cell, tools, "G-02", cell == 0 ? Set.of("lower bench") : Set.of()));
            for (int slot = 0; slot < slotsPerCell; slot++) {
                Instant start = OPENS.plus(Duration.ofDays(slot / SLOTS_A_DAY))
                        .plus(SLOT.multipliedBy(slot % SLOTS_A_DAY))
                        .plus(Duration.ofMinutes(new int[] {0, 7, 15, 22}[cell % 4]));
                slots.add(new FreeSlot("cell-" + cell, new Span(start, start.plus(SLOT))));
            }
        }
        List<Turn> turns = new ArrayList<>();
        Map<String, Integer> owed = new HashMap<>();
        for (int person = 0; person < people; person++) {
            turns.addAll(turnsOf(person, chance));
            owed.put("p" + person, Math.min(2, turnsEach));
        }
        return new Problem(benches, slots, attendants(chance), turns, owed, Map.of(), List.of());
    }

    private int days() {
        return (slotsPerCell + SLOTS_A_DAY - 1) / SLOTS_A_DAY;
    }

    /** Two in three work in pairs: even numbers with the next. */
    private boolean paired(int person) {
        return person % 6 < 4 && (person % 2 == 1 || person + 1 < people);
    }

    private List<Turn> turnsOf(int person, Random chance) {
        String partner = paired(person) ? "p" + (person ^ 1) : null;
        boolean longer = chance.nextInt(25) == 0;
        boolean lower = chance.nextInt(30) == 0;
        String tool = TOOLS[chance.nextInt(5) == 0 ? 1 : 0];
        Work work = new Work(
                tool, longer ? 45 : 30, lower && tool.equals("G-02") ? Set.of("lower bench") : Set.of(), false);
        // both of a pair come at the same times
        Random own = new Random(seed * 31 + (paired(person) ? person / 2 : 1000 + person));
        List<Span> canCome = halfDays(own, 0.35);
        List<Wish> wishes =
                List.of(new Wish(null, canCome.get(own.nextInt(canCome.size()))), new Wish(null, canCome.get(0)));
        Span window = new Span(OPENS, OPENS.plus(Duration.ofDays(days() - chance.nextInt(Math.min(3, days())))));
        List<Turn> turns = new ArrayList<>();
        boolean makeUp = chance.nextInt(40) == 0;
        for (int turn = 0; turn < turnsEach; turn++) {
            turns.add(new Turn(
                    "p" + person + "-" + turn,
                    "p" + person,
                    partner,
                    work,
                    new Times(window, canCome, wishes),
                    makeUp && turn == 0,
                    null));
        }
        return turns;
    }

    /** About one in three mornings and afternoons, never none. */
    private List<Span> halfDays(Random chance, double share) {
        List<Span> spans = new ArrayList<>();
        for (int day = 0; day < days(); day++) {
            Instant morning = OPENS.plus(Duration.ofDays(day));
            if (chance.nextDouble() < share) {
                spans.add(new Span(morning, morning.plus(Duration.ofMinutes(157))));
            }
            if (chance.nextDouble() < share) {
                spans.add(new Span(morning.plus(Duration.ofMinutes(120)), morning.plus(Duration.ofMinutes(330))));
            }
        }
        if (spans.isEmpty()) {
            spans.add(new Span(OPENS, OPENS.plus(Duration.ofMinutes(300))));
        }
        return spans;
    }

    /** Everybody may attend the own partner; one in eight attends others too, and two helpers are there all day. */
    private List<Attendant> attendants(Random chance) {
        Set<String> all = new java.util.HashSet<>();
        for (int cell = 0; cell < cells; cell++) {
            all.add("cell-" + cell);
        }
        List<Attendant> attendants = new ArrayList<>();
        for (int person = 0; person < people; person++) {
            boolean volunteers = chance.nextInt(8) == 0;
            attendants.add(new Attendant("p" + person, all, volunteers ? halfDays(chance, 0.5) : List.of(), false));
        }
        List<Span> always = List.of(new Span(OPENS, OPENS.plus(Duration.ofDays(days()))));
        for (int helper = 0; helper < Math.max(1, cells / 4); helper++) {
            attendants.add(new Attendant("helper-" + helper, all, always, true));
        }
        return attendants;
    }
}
