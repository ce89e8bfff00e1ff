package org.standclear.core.motion;

import static java.util.Objects.requireNonNull;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.standclear.core.motion.RandomArm.between;
import static org.standclear.core.motion.RandomArm.decades;

import java.util.Random;
import java.util.stream.IntStream;
import org.standclear.core.arm.AxisValues;
import org.standclear.core.arm.LineFollowing;
import org.standclear.core.arm.ToolLine;
import org.standclear.core.arm.ToolPose;
import org.standclear.core.geometry.Rotation;
import org.standclear.core.geometry.Vector;

/** A joint or a straight move drawn at random, its peaks as the check finds them beside those of dense sampling. */
final class RandomMove {

    private static final int TOOL = 0;
    private static final int OVERHANG = 1;
    private static final int ENDS = 2;
    private static final int FIRST_AXIS = 3;

    /** The hold may be as far off as the peaks that it follows from. */
    static final double PRECISE = 0.001;

    private final RandomArm drawn;
    private final Random random;
    private final String name;
    private final PeakErrors errors;
    private final double overhang;
    private final double ceiling;

    RandomMove(RandomArm drawn, Random random, String name, PeakErrors errors) {
        this.drawn = drawn;
        this.random = random;
        this.name = name;
        this.errors = errors;
        this.overhang = between(random, 0, 80);
        this.ceiling = random.nextInt(3) == 0 ? Double.POSITIVE_INFINITY : between(random, 20, 600);
    }

    private double[] speeds(double[] q, double[] rates) {
        PlainChain.At at = drawn.chain().at(q);
        double[] speeds = new double[FIRST_AXIS + q.length];
        speeds[TOOL] = at.toolSpeed(rates);
        speeds[OVERHANG] = speeds[TOOL] + at.turning(rates) * overhang;
        speeds[ENDS] = at.fastestEnd(rates);
        for (int i = 0; i < q.length; i++) {
            speeds[FIRST_AXIS + i] = Math.abs(rates[i]);
        }
        return speeds;
    }

    private void compare(String what, double found, double reference) {
        errors.compare(drawn.kind() + ", " + what, name, found, reference);
    }

    void compareJointMove(boolean nearSingular) {
        double[] from = drawn.anywhere(random);
        double[] to = nearSingular ? drawn.nearSingular(random, decades(random, 1e-4, 5)) : drawn.anywhere(random);
        double[] way = IntStream.range(0, from.length)
                .mapToDouble(i -> to[i] - from[i])
                .toArray();
        JointPath path = new JointPath(drawn.arm(), drawn.offset(), AxisValues.of(from), AxisValues.of(way));
        double override = between(random, 0.05, 1);
        double speedPercent = between(random, 5, 100);
        double accelerationPercent = between(random, 5, 100);
        MoveMotion motion = new JointMotion(path, new MoveConditions(override, ceiling, overhang))
                .at(speedPercent, accelerationPercent);
        Profile full = requireNonNull(requireNonNull(motion.trace()).fullPower());
        Profile held = requireNonNull(motion.trace().held());
        double cruise = pace(way, true) * speedPercent / 100 * override;
        double acceleration = pace(way, false) * accelerationPercent / 100;
        assertThat(full.cruise()).isCloseTo(cruise, within(1e-12 * cruise));
        assertThat(full.acceleration()).isCloseTo(acceleration, within(1e-12 * acceleration));

        DensePeaks reference =
                new DensePeaks(s -> speeds(plus(from, way, s), way), evenly(way), 1, cruise, acceleration);
        Peaks peaks = requireNonNull(motion.peaks());
        compare("joint: tool, full power", peaks.fullPowerTool(), reference.peak(TOOL, cruise));
        compare("joint: tool, held", peaks.heldTool(), reference.peak(TOOL, held.cruise()));
        compare("joint: link ends", peaks.heldElbow(), reference.peak(ENDS, held.cruise()));
        compare("joint: overhang", peaks.heldOverhang(), reference.peak(OVERHANG, held.cruise()));
        if (peaks.fullPowerTool() > ceiling * (1 + PRECISE)) {
            assertThat(peaks.heldTool()).isLessThanOrEqualTo(ceiling);
            assertThat(held.cruise())
                    .as(name)
                    .isBetween(
                            reference.cruiseHeldTo(TOOL, ceiling * (1 - PRECISE), cruise),
                            reference.cruiseHeldTo(TOOL, ceiling * (1 + PRECISE), cruise));
        }
    }

    private static double[] plus(double[] from, double[] way, double part) {
        double[] q = from.clone();
        for (int i = 0; i < q.length; i++) {
            q[i] += way[i] * part;
        }
        return q;
    }

    /** What the slowest axis lets the whole move do, in ways a second. */
    private double pace(double[] way, boolean speed) {
        double least = Double.POSITIVE_INFINITY;
        for (int i = 0; i < way.length; i++) {
            var axis = drawn.arm().axes().get(i);
            double own = speed ? requireNonNull(axis.speed()) : axis.acceleration();
            least = Math.min(least, own / Math.abs(way[i]));
        }
        return least;
    }

    private double[] evenly(double[] way) {
        double degrees = 0;
        for (int i = 0; i < way.length; i++) {
            degrees += drawn.arm().axes().get(i).rotary() ? Math.abs(way[i]) : 0;
        }
        int parts = 200 + (int) degrees;
        return IntStream.rangeClosed(0, parts)
                .mapToDouble(i -> (double) i / parts)
                .toArray();
    }

    /** False when what was drawn cannot be followed to its end, or comes too near to a singular place to tell. */
    boolean compareStraightMove(boolean nearSingular) {
        double[] middle = nearSingular ? drawn.nearSingular(random, decades(random, 1e-4, 5)) : drawn.anywhere(random);
        PlainTrack half = PlainTrack.along(drawn.chain(), lineFrom(middle, decades(random, 0.5, 200)), middle);
        if (half == null) {
            return false;
        }
        // beginning there, ending there or leading past it: at a border of the reach most lines past it leave it
        int kind = random.nextInt(3);
        double[] from = kind == 0 ? half.first() : half.end();
        PlainLine back = half.line().back(half.line().length());
        PlainLine past = back.withLength(back.length() + decades(random, 0.5, 200));
        PlainLine whole = kind == 0 ? half.line() : kind == 1 ? back : past;
        if (drawn.kind().equals("scara")) {
            from[1] = Math.IEEEremainder(from[1], 360);
        }
        ToolLine line = toolLine(whole, from);
        Vector start = line.from().place();
        ToolPose pose = line.from();
        PlainLine exact = new PlainLine(
                new double[] {start.x(), start.y(), start.z()},
                PlainLine.turned(pose.yaw(), pose.pitch(), pose.roll()),
                whole.way(),
                whole.about(),
                whole.turnPerMm(),
                whole.length());
        PlainTrack track = PlainTrack.along(drawn.chain(), exact, from);
        if (track == null || !drawn.canTell(track.nearest(), random)) {
            return false;
        }
        compareStraightMove(line, track);
        return true;
    }

    private void compareStraightMove(ToolLine line, PlainTrack track) {
        AxisValues first = AxisValues.of(track.first());
        LineFollowing following = drawn.arm().follow(line, first, drawn.branch(track.first()), drawn.offset());
        assertThat(following.leavesReach()).as(name + " can be followed").isEmpty();
        double speed = between(random, 20, 1000);
        double acceleration = between(random, 100, 4000);
        double cruise = Math.min(speed, ceiling);
        AxisTrack found = new AxisTrack(drawn.arm(), following, line, first);
        MoveConditions conditions = new MoveConditions(1, ceiling, overhang);
        StraightMotion straight = new StraightMotion(drawn.arm(), line, conditions, speed, acceleration);
        Peaks peaks = requireNonNull(straight.motion(found).peaks());
        double[] end = track.end();
        double length = line.length();
        DensePeaks reference = new DensePeaks(
                mm -> {
                    double[] q = track.at(mm);
                    return speeds(q, track.rates(q));
                },
                track.places(),
                length,
                cruise,
                acceleration);
        compare("straight: tool", peaks.heldTool(), reference.peak(TOOL, cruise));
        compare("straight: link ends", peaks.heldElbow(), reference.peak(ENDS, cruise));
        compare("straight: overhang", peaks.heldOverhang(), reference.peak(OVERHANG, cruise));
        Profile held = new Profile(length, cruise, acceleration);
        double busiest = 0;
        for (int i = 0; i < end.length; i++) {
            double own = requireNonNull(drawn.arm().axes().get(i).speed());
            double peak = reference.peak(FIRST_AXIS + i, cruise);
            compare("straight: axis speeds", found.peak(i, held), peak);
            busiest = Math.max(busiest, peak / own);
            assertThat(found.end().get(i)).as(name).isCloseTo(end[i], within(1e-4));
        }
        double greatest = busiest;
        straight.uses(
                found,
                (axis, used) -> compare(
                        "straight: busiest axis, percent",
                        100 * requireNonNull(used) / requireNonNull(axis.speed()),
                        100 * greatest));
    }

    private PlainLine lineFrom(double[] q, double length) {
        PlainChain.At at = drawn.chain().at(q);
        boolean upright = q.length == 4;
        double[] about = upright ? new double[] {0, 0, 1} : direction();
        double turn = random.nextBoolean() ? 0 : Math.toRadians(between(random, -70, 70)) / length;
        return new PlainLine(at.place, at.turned, direction(), about, turn, length);
    }

    private double[] direction() {
        double[] d = {random.nextGaussian(), random.nextGaussian(), random.nextGaussian()};
        double size = Math.sqrt(d[0] * d[0] + d[1] * d[1] + d[2] * d[2]);
        return new double[] {d[0] / size, d[1] / size, d[2] / size};
    }

    private ToolLine toolLine(PlainLine line, double[] from) {
        double[] p = line.place();
        double[] end = line.placeAt(line.length());
        double turn = Math.toDegrees(line.turnPerMm() * line.length());
        Vector place = new Vector(p[0], p[1], p[2]);
        Vector to = new Vector(end[0], end[1], end[2]);
        if (from.length == 4) {
            double yaw =
                    drawn.arm().toolPose(AxisValues.of(from), drawn.offset()).yaw();
            return new ToolLine(new ToolPose(place, yaw), to, turn);
        }
        double[] t = line.turned();
        Rotation turned = new Rotation(t[0], t[1], t[2], t[3], t[4], t[5], t[6], t[7], t[8]);
        double[] about = line.about();
        return new ToolLine(ToolPose.of(place, turned), to, turn, new Vector(about[0], about[1], about[2]));
    }
}
