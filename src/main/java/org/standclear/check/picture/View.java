package org.standclear.check.picture;

import org.standclear.core.geometry.Box;
import org.standclear.core.geometry.Vector;
import org.standclear.core.quantity.Interval;

/**
 * How places of the cell stand on a drawing: one direction across, one up, one scale for both.
 *
 * @param axes which directions of the base frame are drawn
 */
record View(Axes axes, Scale across, Scale up) {

    /** Which directions of the base frame are drawn across and upwards. */
    enum Axes {
        /** From above. */
        X_AND_Y,
        /** From the front. */
        X_AND_Z,
        /** From the right. */
        Y_AND_Z;

        double across(Vector place) {
            return this == Y_AND_Z ? place.y() : place.x();
        }

        double up(Vector place) {
            return this == X_AND_Y ? place.y() : place.z();
        }

        Interval across(Box box) {
            return this == Y_AND_Z ? box.y() : box.x();
        }

        Interval up(Box box) {
            return this == X_AND_Y ? box.y() : box.z();
        }

        String acrossName() {
            return this == Y_AND_Z ? "y" : "x";
        }

        String upName() {
            return this == X_AND_Y ? "y" : "z";
        }
    }

    /** A view of an area, drawn so wide; as high as the area then is. */
    static View of(Axes axes, Extent area, int width, int margin) {
        double scale = (width - 2.0 * margin) / area.width();
        double height = area.height() * scale;
        return new View(
                axes,
                new Scale(area.left(), area.right(), margin, width - margin),
                new Scale(area.bottom(), area.top(), margin + height, margin));
    }

    /** How high the drawing is, with the same margin as on its left. */
    int height() {
        return (int) Math.ceil(up.start() + across.start());
    }

    Place at(Vector place) {
        return at(axes.across(place), axes.up(place));
    }

    Place at(double a, double b) {
        return new Place(across.at(a), up.at(b));
    }

    /** How long a length is drawn. */
    double length(double mm) {
        return across.length(mm);
    }

    /** The lower left and the upper right corner of a box. */
    Place low(Box box) {
        return at(axes.across(box).min(), axes.up(box).min());
    }

    Place high(Box box) {
        return at(axes.across(box).max(), axes.up(box).max());
    }
}
