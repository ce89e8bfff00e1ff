package org.standclear.core.motion;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import java.util.function.Supplier;
import java.util.function.ToDoubleBiFunction;
import org.standclear.core.arm.Arm;
import org.standclear.core.arm.Axis;
import org.standclear.core.arm.AxisValues;
import org.standclear.core.arm.LineFollowing;
import org.standclear.core.arm.RangeFault;
import org.standclear.core.arm.ToolWay;
import org.standclear.core.geometry.Search;

/**
 * What the axes do along a straight line or an arc, sampled the more finely the more they bend, so that neither a singular place
 * nor an axis that turns back is missed.
 */
final class AxisTrack implements AxisCourse {

    private static final int FEWEST_PARTS = 8;

    /** A part is halved at most so often; a line of a metre then has samples 0.1 nm apart. */
    private static final int DEEPEST = 30;

    /** A part is fine enough when the rate in its middle is what its ends foretell, but for this part of it. */
    private static final double FORETOLD = 0.02;

    /**
     * Axis values differ by this from rounding alone, deg or mm: beside a stretched arm they do, however finely a line is
     * cut, and a part that is no finer than that has nothing left to find.
     */
    private static final double ROUNDING = 1e-6;

    /** A line that takes more samples than this is not followed; its axes count as jumping. */
    private static final int MOST_SAMPLES = 100_000;

    /** Rates below this are rounding, per mm. */
    private static final double STILL = 1e-7;

    /** An axis that changes by more than this in the finest part jumps. */
    private static final double JUMP = 1;

    private static final int ROUNDS = 40;

    /** So many parts of a line are looked at for the reach of the links, which goes along evenly. */
    private static final int PLACES = 64;

    private final Arm arm;
    private final List<Axis> axes;
    private final Supplier<AxisCourse> again;
    private final LineFollowing line;
    private final double length;
    private final List<Sample> samples = new ArrayList<>();
    private final boolean[] jumps;

    private record Sample(double mm, AxisValues at, AxisValues rates) {}

    AxisTrack(Arm arm, LineFollowing line, ToolWay way, AxisValues from) {
        this.arm = arm;
        this.axes = arm.axes();
        this.again = () -> new AxisTrack(arm, line, way, from);
        this.line = line;
        this.length = way.length();
        this.jumps = new boolean[axes.size()];
        samples.add(sample(0, from));
        int parts = Math.max(FEWEST_PARTS, way.parts());
        for (int i = 1; i <= parts; i++) {
            sampleTo(way.length() * i / parts, DEEPEST);
        }
    }

    private Sample sample(double mm, AxisValues near) {
        return new Sample(mm, line.at(mm, near), line.ratesPerMm(mm));
    }

    private void sampleTo(double mm, int deepest) {
        Sample first = last();
        Sample middle = sample((first.mm() + mm) / 2, first.at());
        Sample end = sample(mm, middle.at());
        if (samples.size() > MOST_SAMPLES) {
            Arrays.fill(jumps, true);
        } else if (isForetold(first, middle, end) && addWithHalves(first, middle, end)) {
            return;
        } else if (deepest > 0) {
            sampleTo(middle.mm(), deepest - 1);
            sampleTo(mm, deepest - 1);
            return;
        }
        add(first, middle, end);
    }

    /** Asked in the middle alone, a hump beside the middle is foretold now and then by chance: asks both halves too. */
    private boolean addWithHalves(Sample first, Sample middle, Sample end) {
        Sample early = sample((first.mm() + middle.mm()) / 2, first.at());
        Sample late = sample((middle.mm() + end.mm()) / 2, middle.at());
        if (!isForetold(first, early, middle) || !isForetold(middle, late, end)) {
            return false;
        }
        add(first, early, middle);
        add(middle, late, end);
        return true;
    }

    private void add(Sample first, Sample middle, Sample end) {
        noteJumps(first, end);
        samples.add(middle);
        samples.add(end);
    }

    private Sample last() {
        return samples.get(samples.size() - 1);
    }

    /** Whether the cubic through the ends with their rates has the right rate in the middle, for every axis. */
    private boolean isForetold(Sample first, Sample middle, Sample end) {
        double width = end.mm() - first.mm();
        for (int i = 0; i < axes.size(); i++) {
            double before = first.rates().get(i);
            double after = end.rates().get(i);
            double there = middle.rates().get(i);
            double foretold = 1.5 * (end.at().get(i) - first.at().get(i)) / width - (before + after) / 4;
            double most = Math.max(Math.abs(there), Math.max(Math.abs(before), Math.abs(after)));
            if (!(Math.abs(there - foretold) <= FORETOLD * most + STILL + ROUNDING / width)) {
                return false;
            }
        }
        return true;
    }

    private void noteJumps(Sample first, Sample end) {
        for (int i = 0; i < jumps.length; i++) {
            double width = end.mm() - first.mm();
            double change = Math.abs(end.at().get(i) - first.at().get(i));
            double rate = Math.max(
                    Math.abs(first.rates().get(i)), Math.abs(end.rates().get(i)));
            jumps[i] |= change > JUMP && change > 10 * rate * width;
        }
    }

    /** How many samples it took. */
    int samples() {
        return samples.size();
    }

    /** Makes the same track again: a program's tracks are not all kept, they would fill the memory. */
    Supplier<AxisCourse> again() {
        return again;
    }

    @Override
    public AxisValues at(double mm) {
        return line.at(mm, samples.get(lastAtOrBefore(mm)).at());
    }

    private int lastAtOrBefore(double mm) {
        int low = 0;
        int high = samples.size() - 1;
        while (low < high) {
            int middle = (low + high + 1) / 2;
            if (samples.get(middle).mm() <= mm) {
                low = middle;
            } else {
                high = middle - 1;
            }
        }
        return low;
    }

    @Override
    public AxisValues rates(double mm) {
        return line.ratesPerMm(mm);
    }

    /** Where the axes stand at the end of the line. */
    AxisValues end() {
        return last().at();
    }

    /** How far an axis moves altogether from its lowest to its highest value. */
    double span(int axis) {
        double[] values = samples.stream().mapToDouble(s -> s.at().get(axis)).toArray();
        double least = Double.POSITIVE_INFINITY;
        double most = Double.NEGATIVE_INFINITY;
        for (double value : values) {
            least = Math.min(least, value);
            most = Math.max(most, value);
        }
        return most - least;
    }

    /** The greatest speed of an axis under the profile; infinite where the line makes it jump. */
    double peak(int axis, Profile profile) {
        return jumps[axis] ? Double.POSITIVE_INFINITY : curve(axis).peak(profile);
    }

    /** The curve of something that follows from where the axes stand and from their rates. */
    SpeedCurve curve(ToDoubleBiFunction<AxisValues, AxisValues> ofRates) {
        AxisValues from = samples.get(0).at();
        // which turn an axis is on makes no difference to a speed
        DoubleUnaryOperator rate = arm.turnsEvenly()
                ? mm -> ofRates.applyAsDouble(from, line.ratesPerMm(mm))
                : mm -> ofRates.applyAsDouble(line.at(mm, from), line.ratesPerMm(mm));
        return new SpeedCurve(rate, samples.stream().mapToDouble(Sample::mm).toArray());
    }

    private SpeedCurve curve(int axis) {
        DoubleUnaryOperator rate = mm -> Math.abs(line.ratesPerMm(mm).get(axis));
        return new SpeedCurve(rate, samples.stream().mapToDouble(Sample::mm).toArray());
    }

    /** How far the link ends come from axis 1 horizontally, mm. */
    double ownRadius() {
        return arm.turnsEvenly()
                ? arm.ownRadius()
                : LinkEndRadius.greatest(arm, mm -> line.at(mm, samples.get(0).at()), length, PLACES);
    }

    /** The axes that leave their range on the way, each with its worst value. */
    List<RangeFault> faults() {
        List<RangeFault> faults = new ArrayList<>();
        for (int i = 0; i < axes.size(); i++) {
            double worst = worst(i);
            if (!axes.get(i).range().holds(worst)) {
                faults.add(new RangeFault(axes.get(i), worst));
            }
        }
        return faults;
    }

    private double worst(int axis) {
        double worst = samples.get(0).at().get(axis);
        for (int i = 1; i < samples.size(); i++) {
            worst = worse(axis, worst, samples.get(i).at().get(axis));
            if (turnsBackNearTheEnd(axis, samples.get(i - 1), samples.get(i))) {
                worst = worse(axis, worst, turningPoint(axis, samples.get(i - 1), samples.get(i)));
            }
        }
        return worst;
    }

    private double worse(int axis, double a, double b) {
        return axes.get(axis).range().outside(b) > axes.get(axis).range().outside(a) ? b : a;
    }

    private boolean turnsBackNearTheEnd(int axis, Sample a, Sample b) {
        double before = a.rates().get(axis);
        double after = b.rates().get(axis);
        double further = Math.max(Math.abs(before), Math.abs(after)) * (b.mm() - a.mm());
        return before * after < 0
                && (!axes.get(axis).range().holds(a.at().get(axis) + further)
                        || !axes.get(axis).range().holds(a.at().get(axis) - further));
    }

    private double turningPoint(int axis, Sample a, Sample b) {
        double sense = Math.signum(a.rates().get(axis));
        double mm = Search.greatest(place -> sense * line.at(place, a.at()).get(axis), a.mm(), b.mm(), ROUNDS);
        return line.at(mm, a.at()).get(axis);
    }
}
