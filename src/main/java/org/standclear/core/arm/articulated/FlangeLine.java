package org.standclear.core.arm.articulated;

import java.util.List;
import org.standclear.core.arm.AxisValues;
import org.standclear.core.arm.ToolWay;
import org.standclear.core.geometry.Rotation;
import org.standclear.core.geometry.Vector;

/** The flange while the tool point goes along a straight line or an arc and turns evenly. */
final class FlangeLine {

    private final ToolWay line;
    private final Vector offset;
    private final Rotation first;
    private final Vector spin;
    private final double length;
    private final double turnPerMm;

    FlangeLine(ToolWay line, Vector offset) {
        this.line = line;
        this.offset = offset;
        this.first = line.from().rotation();
        this.length = line.length();
        this.turnPerMm = line.turnPerMm();
        this.spin = line.about().times(Math.toRadians(turnPerMm));
    }

    double length() {
        return length;
    }

    Rotation turned(double mm) {
        return turnPerMm == 0
                ? first
                : Rotation.about(line.about(), turnPerMm * mm).times(first);
    }

    Vector tool(double mm) {
        return line.at(mm).place();
    }

    Vector flange(double mm, Rotation turned) {
        return tool(mm).minus(turned.times(offset));
    }

    /** How far a place at that distance from the tool point goes at most while the tool point goes 1 mm. */
    double speedBound(double lever) {
        return 1 + spin.length() * lever;
    }

    /** How much the velocity of a place at that distance from the tool point changes at most, per mm. */
    double bendBound(double lever) {
        return line.curvature() + spin.length() * spin.length() * lever;
    }

    double lever() {
        return offset.length();
    }

    /** How fast the axes go, deg a mm. */
    AxisValues rates(List<DhRow> rows, double[] at, double mm) {
        LinkFrames frames = new LinkFrames(rows, AxisValues.of(at));
        Vector way = line.direction(mm);
        double[] twist = {way.x(), way.y(), way.z(), spin.x(), spin.y(), spin.z()};
        double[] rates = LinearSystem.solve(frames.jacobian(frames.tool(offset)), twist);
        for (int i = 0; i < rates.length; i++) {
            rates[i] = Math.toDegrees(rates[i]);
        }
        return AxisValues.of(rates);
    }
}
