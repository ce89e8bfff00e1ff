package org.standclear.core.forecast;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import java.util.function.ToDoubleFunction;

/**
 * Plays days at the benches, event by event: people come, set up, wait for a technician, are released and watched at the
 * first start. The same seed gives the same days.
 *
 * <p>Minutes throughout. Wait is from the ready bench to the begin of the technician's work; time left to run is from
 * the end of watching to the end of the slot less the close-out; busy is the technicians' work over the slots' time.
 */
public final class ReleaseSimulation {

    private static final int GROUPS = 30;
    private static final double NINETIETH = 0.9;

    private final ReleaseDay day;
    private final BenchSteps steps;

    public ReleaseSimulation(ReleaseDay day, BenchSteps steps) {
        this.day = day;
        this.steps = steps;
    }

    /** A bench that is ready, and when its slot ends. */
    private record Ready(double at, double slotEnd) {}

    /** What one or several days came to. */
    private record Played(List<Double> waits, int shortRuns, double work, int days) {}

    /** Plays that many days, at least one. */
    public ReleaseWaits play(int days, long seed) {
        if (days < 1) {
            throw new IllegalArgumentException("at least one day");
        }
        SplittableRandom chance = new SplittableRandom(seed);
        int groups = Math.min(GROUPS, days);
        List<Played> parts = new ArrayList<>();
        for (int group = 0; group < groups; group++) {
            int from = (int) ((long) days * group / groups);
            int until = (int) ((long) days * (group + 1) / groups);
            parts.add(playGroup(until - from, chance));
        }
        Played all = together(parts);
        return new ReleaseWaits(
                estimate(all, parts, ReleaseSimulation::meanWait),
                estimate(all, parts, ReleaseSimulation::ninetiethWait),
                estimate(all, parts, ReleaseSimulation::shortShare),
                estimate(all, parts, this::busy),
                days);
    }

    private Played playGroup(int days, SplittableRandom chance) {
        List<Double> waits = new ArrayList<>();
        int shortRuns = 0;
        double work = 0;
        for (int played = 0; played < days; played++) {
            double[] free = new double[day.technicians()];
            for (Ready ready : readyBenches(chance)) {
                int first = firstFree(free);
                double begins = Math.max(ready.at(), free[first]);
                double ends =
                        begins + steps.release().draw(chance) + steps.watch().draw(chance);
                free[first] = ends;
                work += ends - begins;
                waits.add(begins - ready.at());
                if (!(ready.slotEnd() - steps.closeOutMinutes() - ends >= day.shortRunMinutes())) {
                    shortRuns++;
                }
            }
        }
        return new Played(waits, shortRuns, work, days);
    }

    /** The benches of one day at which somebody came, in the order in which they are ready. */
    private List<Ready> readyBenches(SplittableRandom chance) {
        List<Ready> ready = new ArrayList<>();
        for (double offset : day.startMinutes()) {
            for (int slot = 0; slot < day.slots(); slot++) {
                double start = offset + slot * day.slotMinutes();
                if (chance.nextDouble() >= steps.noShow()) {
                    ready.add(new Ready(start + steps.setUp().draw(chance), start + day.slotMinutes()));
                }
            }
        }
        ready.sort((one, other) -> Double.compare(one.at(), other.at()));
        return ready;
    }

    private static int firstFree(double[] free) {
        int first = 0;
        for (int technician = 1; technician < free.length; technician++) {
            if (free[technician] < free[first]) {
                first = technician;
            }
        }
        return first;
    }

    private static Played together(List<Played> parts) {
        return new Played(
                parts.stream().flatMap(part -> part.waits().stream()).toList(),
                parts.stream().mapToInt(Played::shortRuns).sum(),
                parts.stream().mapToDouble(Played::work).sum(),
                parts.stream().mapToInt(Played::days).sum());
    }

    private static Estimate estimate(Played all, List<Played> parts, ToDoubleFunction<Played> value) {
        return Estimate.of(
                value.applyAsDouble(all),
                parts.stream().map(value::applyAsDouble).toList());
    }

    private static double meanWait(Played played) {
        return played.waits().stream()
                .mapToDouble(Double::doubleValue)
                .average()
                .orElse(0);
    }

    private static double ninetiethWait(Played played) {
        double[] waits =
                played.waits().stream().mapToDouble(Double::doubleValue).toArray();
        if (waits.length == 0) {
            return 0;
        }
        Arrays.sort(waits);
        return waits[Math.max(0, (int) Math.ceil(NINETIETH * waits.length) - 1)];
    }

    private static double shortShare(Played played) {
        return played.waits().isEmpty()
                ? 0
                : (double) played.shortRuns() / played.waits().size();
    }

    private double busy(Played played) {
        return played.work() / (played.days() * day.slots() * day.slotMinutes() * day.technicians());
    }
}
