package org.standclear.check.picture;

/**
 * Where values of one kind stand along a side of a drawing. What lies beyond the ends is drawn at the end.
 *
 * @param least the value drawn at {@code start}
 * @param most the value drawn at {@code end}, greater
 */
record Scale(double least, double most, double start, double end) {

    Scale {
        if (!(least < most) || !Double.isFinite(most - least)) {
            throw new IllegalArgumentException("a scale needs two values apart, not " + least + " and " + most);
        }
    }

    /** Where a value stands; a value that is none stands at the end. */
    double at(double value) {
        if (Double.isNaN(value)) {
            return end;
        }
        double part = (Math.max(least, Math.min(most, value)) - least) / (most - least);
        return start + (end - start) * part;
    }

    /** How long a difference of values is drawn. */
    double length(double difference) {
        return Math.abs(difference * (end - start) / (most - least));
    }

    /** A round number of which about so many fit between the ends: 1, 2 or 5 with noughts. */
    double roundStep(int about) {
        double raw = (most - least) / about;
        double power = Math.pow(10, Math.floor(Math.log10(raw)));
        double part = raw / power;
        double round = part <= 1 ? 1 : part <= 2 ? 2 : part <= 5 ? 5 : 10;
        return round * power;
    }
}
