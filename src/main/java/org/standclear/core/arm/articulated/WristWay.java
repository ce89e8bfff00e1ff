package org.standclear.core.arm.articulated;

import java.util.OptionalDouble;
import org.standclear.core.arm.Posture;
import org.standclear.core.geometry.Rotation;
import org.standclear.core.geometry.Vector;
import org.standclear.core.quantity.Tolerance;

/**
 * Where the wrist leaves its reach on the way of the flange. A part of the way counts as inside only when it is proven to
 * be: a function lies no further from its chord than an eighth of a bound of its second derivative times the squared
 * width. With h the wrist's distance from axis 1, z its height above the shoulder, e how far the shoulder stands aside, a
 * the shoulder's way out and o = sqrt(h^2 - e^2), the squared distance from the shoulder is h^2 + z^2 - e^2 + a^2 - 2 a o
 * (+ 2 a o with the arm back over itself). Lengths in mm; inside means inside but for {@link Tolerance#LENGTH}.
 */
final class WristWay {

    /** Parts shorter than this are not cut any more, mm: the wrist stays where it is in them. */
    private static final double FINEST = 1e-7;

    /** A way that needs more looks than this counts as leaving the reach. */
    private static final int MOST_LOOKS = 100_000;

    private final ClosedForm form;
    private final FlangeLine line;
    private final Posture posture;
    private final double aside;
    private final double out;
    private final double speed;
    private final double farthestFromAxis;
    private final double bendOfAxis;
    private final double bendOfPlace;
    private final double nearest;
    private final double farthest;
    private int looks;

    /** What is seen after so many mm: squared distances from axis 1 and from the foot of the shoulder, and from it. */
    private record Look(double mm, double fromAxis, double place, double fromShoulder, boolean outside) {}

    /** A range of a squared length. */
    private record Range(double least, double most) {

        static Range of(double a, double b, double sag) {
            return new Range(Math.min(a, b) - sag, Math.max(a, b) + sag);
        }
    }

    WristWay(ClosedForm form, FlangeLine line, Posture posture, double lever) {
        this.form = form;
        this.line = line;
        this.posture = posture;
        Vector first = wrist(0);
        ClosedForm.Reach reach = form.reach(first, posture);
        this.aside = reach.aside();
        this.out = form.shoulderOut() * posture.shoulder().sign();
        this.nearest = reach.nearest();
        this.farthest = reach.farthest();
        this.speed = line.speedBound(lever);
        double bend = line.bendBound(lever);
        this.farthestFromAxis = first.horizontal() + speed * line.length();
        double farthestPlace = Math.hypot(farthestFromAxis, Math.abs(form.above(first)) + speed * line.length());
        this.bendOfAxis = 2 * (speed * speed + farthestFromAxis * bend);
        this.bendOfPlace = 2 * (speed * speed + farthestPlace * bend);
    }

    private Vector wrist(double mm) {
        Rotation turned = line.turned(mm);
        return form.wrist(line.flange(mm, turned), turned);
    }

    private Look look(double mm) {
        looks++;
        Vector wrist = wrist(mm);
        ClosedForm.Reach reach = form.reach(wrist, posture);
        double h = wrist.horizontal();
        double z = form.above(wrist);
        double fromShoulder = reach.fromShoulder();
        return new Look(mm, h * h, h * h + z * z, fromShoulder * fromShoulder, Tolerance.isOutside(-reach.margin()));
    }

    /** So many places were looked at. */
    int looks() {
        return looks;
    }

    /** After how many mm it leaves its reach; empty when it never does. */
    OptionalDouble leaves() {
        return beyond(look(0), look(line.length()));
    }

    private OptionalDouble beyond(Look first, Look last) {
        if (first.outside() || looks > MOST_LOOKS) {
            return OptionalDouble.of(first.mm());
        }
        if (isInside(first, last)) {
            return OptionalDouble.empty();
        }
        if (last.mm() - first.mm() < FINEST) {
            return last.outside() ? OptionalDouble.of(last.mm()) : OptionalDouble.empty();
        }
        Look middle = look((first.mm() + last.mm()) / 2);
        OptionalDouble early = beyond(first, middle);
        return early.isPresent() ? early : beyond(middle, last);
    }

    private boolean isInside(Look first, Look last) {
        double eighth = square(last.mm() - first.mm()) / 8;
        Range fromAxis = Range.of(first.fromAxis(), last.fromAxis(), bendOfAxis * eighth);
        if (aside > Tolerance.LENGTH && fromAxis.least() < square(aside - Tolerance.LENGTH)) {
            return false;
        }
        Range ahead = new Range(fromAxis.least() - square(aside), fromAxis.most() - square(aside));
        return ahead.least() > 0 && isWithin(smooth(first, last, ahead, eighth))
                || isWithin(coarse(first, last, ahead, eighth));
    }

    /** By the second derivative of the squared distance itself, which grows without bound where o is 0. */
    private Range smooth(Look first, Look last, Range ahead, double eighth) {
        double root = Math.sqrt(ahead.least());
        double bendOfRoot = bendOfAxis / (2 * root) + square(farthestFromAxis * speed) / (ahead.least() * root);
        double bend = bendOfPlace + 2 * Math.abs(out) * bendOfRoot;
        return Range.of(first.fromShoulder(), last.fromShoulder(), bend * eighth);
    }

    /** By the range of each part of the sum, which is good where o is next to 0. */
    private Range coarse(Look first, Look last, Range ahead, double eighth) {
        Range place = Range.of(first.place(), last.place(), bendOfPlace * eighth);
        double rest = square(out) - square(aside);
        double less = 2 * out * Math.sqrt(Math.max(0, ahead.least()));
        double more = 2 * out * Math.sqrt(Math.max(0, ahead.most()));
        return new Range(place.least() + rest - Math.max(less, more), place.most() + rest - Math.min(less, more));
    }

    private boolean isWithin(Range fromShoulder) {
        return fromShoulder.most() <= square(farthest + Tolerance.LENGTH)
                && (nearest <= Tolerance.LENGTH || fromShoulder.least() >= square(nearest - Tolerance.LENGTH));
    }

    private static double square(double value) {
        return value * value;
    }
}
