package org.standclear.core.arm;

import java.util.Arrays;

/** A value for each axis of an arm, in the axis's own unit: where the axes stand, or how fast they go. */
public final class AxisValues {

    private final double[] values;

    private AxisValues(double[] values) {
        this.values = values;
    }

    /** The values in the order of the arm's axes. */
    public static AxisValues of(double... values) {
        return new AxisValues(values.clone());
    }

    /** The value of an axis, counted from 0. */
    public double get(int axis) {
        return values[axis];
    }

    /** How many axes there are. */
    public int count() {
        return values.length;
    }

    /** These values, changed by a part of others. */
    public AxisValues plus(AxisValues others, double part) {
        double[] sum = new double[values.length];
        for (int i = 0; i < sum.length; i++) {
            sum[i] = values[i] + others.values[i] * part;
        }
        return new AxisValues(sum);
    }

    /** All of them so many times. */
    public AxisValues times(double factor) {
        return of(Arrays.stream(values).map(value -> value * factor).toArray());
    }

    /** The way from others to these. */
    public AxisValues minus(AxisValues others) {
        return plus(others, -1);
    }

    @Override
    public String toString() {
        return Arrays.toString(values);
    }
}
