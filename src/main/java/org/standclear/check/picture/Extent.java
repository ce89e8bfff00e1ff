package org.standclear.check.picture;

/** The part of a plane that a view has to show, mm; grows with what is put into it. */
final class Extent {

    private static final double LEAST = 60;
    private static final double MOST = 1e7;

    /** A drawing is at most so many times higher than wide, and the other way round. */
    private static final double SLIMMEST = 0.35;

    private static final double TALLEST = 1.1;

    private double left = Double.POSITIVE_INFINITY;
    private double right = Double.NEGATIVE_INFINITY;
    private double bottom = Double.POSITIVE_INFINITY;
    private double top = Double.NEGATIVE_INFINITY;

    /** Shows this place too; one beyond all measure is left out. */
    Extent with(double a, double b) {
        if (Math.abs(a) <= MOST && Math.abs(b) <= MOST) {
            left = Math.min(left, a);
            right = Math.max(right, a);
            bottom = Math.min(bottom, b);
            top = Math.max(top, b);
        }
        return this;
    }

    /** As much around as is needed to be neither empty nor a ribbon, and a little air. */
    Extent rounded() {
        if (left > right) {
            with(-LEAST, -LEAST).with(LEAST, LEAST);
        }
        double width = Math.max(LEAST, right - left);
        double height = Math.max(LEAST, top - bottom);
        double air = Math.max(width, height) * 0.04;
        grow(Math.max(width, height / TALLEST) + 2 * air, Math.max(height, width * SLIMMEST) + 2 * air);
        return this;
    }

    private void grow(double width, double height) {
        double across = (left + right) / 2;
        double up = (bottom + top) / 2;
        left = across - width / 2;
        right = across + width / 2;
        bottom = up - height / 2;
        top = up + height / 2;
    }

    double left() {
        return left;
    }

    double right() {
        return right;
    }

    double bottom() {
        return bottom;
    }

    double top() {
        return top;
    }

    double width() {
        return right - left;
    }

    double height() {
        return top - bottom;
    }
}
