package org.standclear.core.motion;

import java.util.ArrayList;
import java.util.List;
import org.standclear.core.geometry.Vector;

/**
 * An arm as nothing but turns and ways one after the other, from its foot to its tool point. Written for the reference
 * of the peaks alone: it shares no formula with the arms that it is held against. Angles in deg, lengths in mm.
 */
final class PlainChain {

    private static final int X = 0;
    private static final int Y = 1;
    private static final int Z = 2;

    private final List<Link> links = new ArrayList<>();
    private int axes;

    /** A turn about, or a way along, one of the chain's own directions; axis is -1 where nothing moves. */
    private record Link(boolean turns, int along, int axis, double value, boolean end, double cos, double sin) {

        Link(boolean turns, int along, int axis, double value, boolean end) {
            this(turns, along, axis, value, end, Math.cos(Math.toRadians(value)), Math.sin(Math.toRadians(value)));
        }
    }

    private PlainChain() {}

    /** Two links in the plane, a lift, a wrist; its one link end is the elbow. */
    static PlainChain scara(double l1, double l2, Vector offset) {
        return new PlainChain()
                .axis(true, Z, 0)
                .way(X, l1, true)
                .axis(true, Z, 0)
                .way(X, l2, false)
                .axis(false, Z, 0)
                .axis(true, Z, 0)
                .tool(offset);
    }

    /** Three linear axes and a turning one. */
    static PlainChain gantry(Vector offset) {
        return new PlainChain()
                .axis(false, X, 0)
                .axis(false, Y, 0)
                .axis(false, Z, 0)
                .axis(true, Z, 0)
                .tool(offset);
    }

    /** Rows of a, alpha, d (standard Denavit and Hartenberg); every place between two ways is a link end. */
    static PlainChain sixAxes(double[] table, Vector offset) {
        PlainChain chain = new PlainChain();
        for (int i = 0; i < 18; i += 3) {
            chain.axis(true, Z, 0).way(Z, table[i + 2], true).way(X, table[i], true);
            chain.links.add(new Link(true, X, -1, table[i + 1], false));
        }
        return chain.tool(offset);
    }

    private PlainChain axis(boolean turns, int along, double value) {
        links.add(new Link(turns, along, axes++, value, false));
        return this;
    }

    private PlainChain way(int along, double mm, boolean end) {
        links.add(new Link(false, along, -1, mm, end));
        return this;
    }

    private PlainChain tool(Vector offset) {
        return way(X, offset.x(), false).way(Y, offset.y(), false).way(Z, offset.z(), false);
    }

    int axes() {
        return axes;
    }

    /** The arm at these axis values. */
    At at(double[] q) {
        return new At(q);
    }

    /** Where everything stands. */
    final class At {

        /** How the tool is turned, row by row. */
        final double[] turned = {1, 0, 0, 0, 1, 0, 0, 0, 1};

        final double[] place = new double[3];
        private final double[][] directions = new double[axes][];
        private final double[][] origins = new double[axes][];
        private final boolean[] turns = new boolean[axes];
        private final List<double[]> ends = new ArrayList<>();
        private final List<Integer> carriers = new ArrayList<>();

        private At(double[] q) {
            int passed = 0;
            for (Link link : links) {
                double value = link.value();
                if (link.axis() >= 0) {
                    value += q[link.axis()];
                    directions[link.axis()] = column(link.along());
                    origins[link.axis()] = place.clone();
                    turns[link.axis()] = link.turns();
                    passed++;
                }
                if (link.turns() && link.axis() < 0) {
                    turn(link.along(), link.cos(), link.sin());
                } else if (link.turns()) {
                    turn(link.along(), Math.cos(Math.toRadians(value)), Math.sin(Math.toRadians(value)));
                } else {
                    go(link.along(), value);
                }
                if (link.end()) {
                    ends.add(place.clone());
                    carriers.add(passed);
                }
            }
        }

        private double[] column(int i) {
            return new double[] {turned[i], turned[3 + i], turned[6 + i]};
        }

        private void turn(int about, double c, double s) {
            int from = (about + 1) % 3;
            int to = (about + 2) % 3;
            for (int row = 0; row < 9; row += 3) {
                double a = turned[row + from];
                double b = turned[row + to];
                turned[row + from] = a * c + b * s;
                turned[row + to] = b * c - a * s;
            }
        }

        private void go(int along, double way) {
            for (int row = 0; row < 3; row++) {
                place[row] += turned[3 * row + along] * way;
            }
        }

        /** How fast the place that the first axes carry goes there at these rates. */
        private double speed(double[] there, int carried, double[] rates) {
            double[] v = new double[3];
            for (int i = 0; i < carried; i++) {
                double[] column = velocity(there, i);
                for (int k = 0; k < 3; k++) {
                    v[k] += column[k] * rates[i];
                }
            }
            return Math.sqrt(v[0] * v[0] + v[1] * v[1] + v[2] * v[2]);
        }

        /** The velocity of a place for a rate of 1 of one axis. */
        private double[] velocity(double[] there, int axis) {
            double[] u = directions[axis];
            if (!turns[axis]) {
                return u;
            }
            double x = there[0] - origins[axis][0];
            double y = there[1] - origins[axis][1];
            double z = there[2] - origins[axis][2];
            double rad = Math.PI / 180;
            return new double[] {rad * (u[1] * z - u[2] * y), rad * (u[2] * x - u[0] * z), rad * (u[0] * y - u[1] * x)};
        }

        double toolSpeed(double[] rates) {
            return speed(place, axes, rates);
        }

        double fastestEnd(double[] rates) {
            double fastest = 0;
            for (int i = 0; i < ends.size(); i++) {
                fastest = Math.max(fastest, speed(ends.get(i), carriers.get(i), rates));
            }
            return fastest;
        }

        /** How fast the tool turns, rad. */
        double turning(double[] rates) {
            double[] w = new double[3];
            for (int i = 0; i < axes; i++) {
                for (int k = 0; k < 3 && turns[i]; k++) {
                    w[k] += directions[i][k] * rates[i] * Math.PI / 180;
                }
            }
            return Math.sqrt(w[0] * w[0] + w[1] * w[1] + w[2] * w[2]);
        }

        /** A column an axis; going in mm, turning in rad times a lever, of four axes only the turn about z. */
        double[][] jacobian(double lever) {
            double[][] jacobian = new double[axes][axes];
            for (int i = 0; i < axes; i++) {
                double[] going = velocity(place, i);
                double factor = turns[i] ? lever * Math.PI / 180 : 0;
                for (int k = 0; k < 3; k++) {
                    jacobian[k][i] = going[k];
                    if (axes == 6) {
                        jacobian[3 + k][i] = directions[i][k] * factor;
                    }
                }
                if (axes == 4) {
                    jacobian[3][i] = directions[i][2] * factor;
                }
            }
            return jacobian;
        }
    }
}
