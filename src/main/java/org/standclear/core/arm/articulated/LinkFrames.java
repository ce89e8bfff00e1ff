package org.standclear.core.arm.articulated;

import java.util.List;
import org.standclear.core.arm.AxisValues;
import org.standclear.core.geometry.Rotation;
import org.standclear.core.geometry.Vector;

/** Where the frames of the links stand in the base frame; frame 0 is the base, frame 6 the flange. */
final class LinkFrames {

    private final Rotation[] turned;
    private final Vector[] origins;
    private final List<DhRow> rows;

    LinkFrames(List<DhRow> rows, AxisValues at) {
        this.rows = rows;
        this.turned = new Rotation[rows.size() + 1];
        this.origins = new Vector[rows.size() + 1];
        turned[0] = Rotation.NONE;
        origins[0] = new Vector(0, 0, 0);
        for (int i = 0; i < rows.size(); i++) {
            Rotation next = rows.get(i).rotation(at.get(i));
            origins[i + 1] = origins[i].plus(turned[i].times(rows.get(i).step(next)));
            turned[i + 1] = turned[i].times(next);
        }
    }

    Rotation flangeTurned() {
        return turned[rows.size()];
    }

    Vector flange() {
        return origins[rows.size()];
    }

    Vector tool(Vector offset) {
        return flange().plus(flangeTurned().times(offset));
    }

    Rotation turned(int frame) {
        return turned[frame];
    }

    Vector origin(int frame) {
        return origins[frame];
    }

    /** The direction of an axis, counted from 0. */
    Vector axis(int axis) {
        Rotation frame = turned[axis];
        return new Vector(frame.xz(), frame.yz(), frame.zz());
    }

    /** Where link {@code frame} leaves its axis: after d, before a. */
    Vector corner(int frame) {
        return origins[frame - 1].plus(axis(frame - 1).times(rows.get(frame - 1).d()));
    }

    /** How fast the arm turns after so many axes, rad. */
    Vector spin(AxisValues rates, int axes) {
        Vector spin = new Vector(0, 0, 0);
        for (int i = 0; i < axes; i++) {
            spin = spin.plus(axis(i).times(Math.toRadians(rates.get(i))));
        }
        return spin;
    }

    /** How fast a place goes that is carried by the first axes. */
    Vector velocity(Vector place, AxisValues rates, int axes) {
        Vector velocity = new Vector(0, 0, 0);
        for (int i = 0; i < axes; i++) {
            Vector lever = place.minus(origins[i]);
            velocity = velocity.plus(axis(i).times(Math.toRadians(rates.get(i))).cross(lever));
        }
        return velocity;
    }

    /**
     * The Jacobian of the tool point: velocity (mm) above turning (rad), a column an axis, per rad.
     */
    double[][] jacobian(Vector tool) {
        double[][] jacobian = new double[6][rows.size()];
        for (int i = 0; i < rows.size(); i++) {
            Vector axis = axis(i);
            Vector lever = axis.cross(tool.minus(origins[i]));
            jacobian[0][i] = lever.x();
            jacobian[1][i] = lever.y();
            jacobian[2][i] = lever.z();
            jacobian[3][i] = axis.x();
            jacobian[4][i] = axis.y();
            jacobian[5][i] = axis.z();
        }
        return jacobian;
    }
}
