package org.standclear.core.arm.articulated;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.standclear.core.arm.Arm;
import org.standclear.core.arm.Axis;
import org.standclear.core.arm.AxisValues;
import org.standclear.core.arm.Branch;
import org.standclear.core.arm.GantryArm;
import org.standclear.core.arm.LineFollowing;
import org.standclear.core.arm.Posture;
import org.standclear.core.arm.Solution;
import org.standclear.core.arm.ToolPose;
import org.standclear.core.arm.ToolWay;
import org.standclear.core.arm.Turns;
import org.standclear.core.geometry.Rotation;
import org.standclear.core.geometry.Vector;

/** Six rotary axes one after the other, described by a standard Denavit-Hartenberg table. */
public final class ArticulatedArm implements Arm {

    private static final int AXES = 6;

    private final List<DhRow> rows;
    private final List<Axis> axes;
    private final Inverse inverse;
    private final List<LinkEnd> linkEnds;

    /** A place of the arm: the origin of a link's frame, or the corner where the link leaves its axis. */
    private record LinkEnd(int frame, boolean corner) {

        Vector place(LinkFrames frames) {
            return corner ? frames.corner(frame) : frames.origin(frame);
        }
    }

    /** An arm with six rows and six axes. */
    public ArticulatedArm(List<DhRow> rows, List<Axis> axes) {
        if (rows.size() != AXES || axes.size() != AXES || !axes.stream().allMatch(Axis::rotary)) {
            throw new IllegalArgumentException("an articulated arm has six rows and six rotary axes");
        }
        this.rows = List.copyOf(rows);
        this.axes = List.copyOf(axes);
        this.inverse = new Inverse(this.rows);
        this.linkEnds = linkEnds(this.rows);
    }

    /** What moves and is not the same place as the one before. */
    private static List<LinkEnd> linkEnds(List<DhRow> rows) {
        List<LinkEnd> ends = new ArrayList<>();
        boolean onAxisOne = true;
        for (int frame = 1; frame <= AXES; frame++) {
            DhRow row = rows.get(frame - 1);
            onAxisOne &= frame == 1 || row.d() == 0;
            if (row.a() != 0 && row.d() != 0 && !onAxisOne) {
                ends.add(new LinkEnd(frame, true));
            }
            onAxisOne &= row.a() == 0;
            if (row.length() != 0 && !onAxisOne) {
                ends.add(new LinkEnd(frame, false));
            }
        }
        return List.copyOf(ends);
    }

    @Override
    public String kind() {
        return "articulated";
    }

    @Override
    public List<Axis> axes() {
        return axes;
    }

    /** The rows of the table. */
    public List<DhRow> rows() {
        return rows;
    }

    /** Whether the inverse is exact but for rounding; else it is numeric. */
    public boolean hasClosedForm() {
        return inverse.closedForm() != null;
    }

    @Override
    public boolean searches() {
        return !hasClosedForm();
    }

    @Override
    public boolean hasElbow() {
        return true;
    }

    @Override
    public boolean takes(@Nullable Branch branch) {
        return branch instanceof Posture;
    }

    @Override
    public String needs() {
        return "needs six axis values, such as axes: [0, -90, 90, 0, 90, 0], or x, y, z, roll, pitch, yaw with shoulder:"
                + " front or back, elbow: up or down and wrist: plain or turned";
    }

    @Override
    public ToolPose toolPose(AxisValues at, Vector offset) {
        LinkFrames frames = new LinkFrames(rows, at);
        return ToolPose.of(frames.tool(offset), frames.flangeTurned());
    }

    /** How the flange is turned at these axis values. */
    public Rotation flangeTurned(AxisValues at) {
        return new LinkFrames(rows, at).flangeTurned();
    }

    /** The places that the arm's drawing goes through from base to flange. */
    public List<Vector> skeleton(AxisValues at) {
        LinkFrames frames = new LinkFrames(rows, at);
        List<Vector> places = new ArrayList<>();
        places.add(frames.origin(0));
        for (int frame = 1; frame <= AXES; frame++) {
            if (rows.get(frame - 1).a() != 0 && rows.get(frame - 1).d() != 0) {
                places.add(frames.corner(frame));
            }
            places.add(frames.origin(frame));
        }
        return places;
    }

    @Override
    public List<Vector> outline(AxisValues at, Vector offset) {
        List<Vector> outline = new ArrayList<>(skeleton(at));
        outline.add(toolPose(at, offset).place());
        return outline;
    }

    @Override
    public double toolSpeed(AxisValues at, AxisValues rates, Vector offset) {
        LinkFrames frames = new LinkFrames(rows, at);
        return frames.velocity(frames.tool(offset), rates, AXES).length();
    }

    @Override
    public double toolSpeedBound(AxisValues rates, Vector offset) {
        double lever = offset.length();
        double bound = 0;
        for (int i = AXES - 1; i >= 0; i--) {
            lever += rows.get(i).length();
            bound += Math.abs(Math.toRadians(rates.get(i))) * lever;
        }
        return bound;
    }

    @Override
    public double turning(AxisValues rates, Vector offset) {
        double turning = 0;
        for (int i = 0; i < AXES; i++) {
            turning += Math.abs(Math.toRadians(rates.get(i)));
        }
        return turning;
    }

    @Override
    public boolean turnsEvenly() {
        return false;
    }

    @Override
    public double turnRate(AxisValues at, AxisValues rates) {
        return new LinkFrames(rows, at).spin(rates, AXES).length();
    }

    @Override
    public int linkEnds() {
        return linkEnds.size();
    }

    @Override
    public double linkEndSpeed(int end, AxisValues at, AxisValues rates) {
        LinkFrames frames = new LinkFrames(rows, at);
        LinkEnd link = linkEnds.get(end);
        return frames.velocity(link.place(frames), rates, link.frame()).length();
    }

    @Override
    public double linkEndRadius(int end, AxisValues at) {
        return linkEnds.get(end).place(new LinkFrames(rows, at)).horizontal();
    }

    @Override
    public double ownRadius() {
        return 0;
    }

    @Override
    public Solution solve(ToolPose target, @Nullable Branch branch, Vector offset, @Nullable AxisValues before) {
        Inverse.Result result = inverse.solve(target, posture(branch), offset, before);
        double[] found = result.axes();
        if (found == null) {
            return new Solution.Unsolved(result.why());
        }
        double[] turned = new double[AXES];
        for (int i = 0; i < AXES; i++) {
            turned[i] = Turns.choose(found[i], axes.get(i).range(), before == null ? 0 : before.get(i));
        }
        AxisValues chosen = AxisValues.of(turned);
        return new Solution.Found(chosen, GantryArm.faults(axes, chosen));
    }

    /** The axis values of every posture that reaches a place, each on some turn; up to eight. */
    public List<AxisValues> solutions(ToolPose target, Vector offset) {
        return inverse.all(target, offset);
    }

    /** The posture of the arm at these axis values. */
    public Posture posture(AxisValues at) {
        return Stance.of(rows, at).posture();
    }

    private static Posture posture(@Nullable Branch branch) {
        if (branch instanceof Posture posture) {
            return posture;
        }
        throw new IllegalArgumentException("an articulated arm needs a posture");
    }

    /** Where two postures meet, as in a straight wrist, a place belongs to either. */
    @Override
    public @Nullable Branch shared(Reached from, Reached to, Vector offset) {
        Posture own = posture(from.branch());
        Posture other = posture(to.branch());
        if (own.equals(other)) {
            return own;
        }
        Stance begin = stance(from.pose(), own, offset);
        if (begin != null && begin.agreed(own, other) != null) {
            return other;
        }
        Stance end = stance(to.pose(), other, offset);
        return end != null && end.agreed(other, own) != null ? own : null;
    }

    private @Nullable Stance stance(ToolPose at, Posture posture, Vector offset) {
        double[] axes = inverse.solve(at, posture, offset, null).axes();
        return axes == null ? null : Stance.of(rows, AxisValues.of(axes));
    }

    @Override
    public LineFollowing follow(ToolWay line, AxisValues from, @Nullable Branch branch, Vector offset) {
        FlangeLine flange = new FlangeLine(line, offset);
        ClosedForm form = inverse.closedForm();
        return form == null
                ? new NumericLine(rows, inverse.newton(), flange, from)
                : new ClosedFormLine(rows, form, flange, posture(branch), from);
    }
}
