package org.standclear.core.motion;

/**
 * A straight line of the tool point with an even turn, for the reference of the peaks.
 *
 * @param place where it begins, mm
 * @param turned how the tool is turned there, row by row
 * @param way its direction, of length 1
 * @param about the direction about which the tool turns, of length 1
 * @param turnPerMm rad
 */
record PlainLine(double[] place, double[] turned, double[] way, double[] about, double turnPerMm, double length) {

    double[] placeAt(double mm) {
        return new double[] {place[0] + way[0] * mm, place[1] + way[1] * mm, place[2] + way[2] * mm};
    }

    /** How the tool is turned after so many mm (Rodrigues). */
    double[] turnedAt(double mm) {
        double s = Math.sin(turnPerMm * mm);
        double versine = 1 - Math.cos(turnPerMm * mm);
        double x = about[0];
        double y = about[1];
        double z = about[2];
        double[] turn = {
            1 - versine * (y * y + z * z),
            versine * x * y - s * z,
            versine * x * z + s * y,
            versine * x * y + s * z,
            1 - versine * (x * x + z * z),
            versine * y * z - s * x,
            versine * x * z - s * y,
            versine * y * z + s * x,
            1 - versine * (x * x + y * y)
        };
        return times(turn, turned);
    }

    static double[] times(double[] a, double[] b) {
        double[] product = new double[9];
        for (int i = 0; i < 9; i++) {
            int row = i / 3 * 3;
            int column = i % 3;
            product[i] = a[row] * b[column] + a[row + 1] * b[3 + column] + a[row + 2] * b[6 + column];
        }
        return product;
    }

    /** Yaw, pitch and roll, deg, turned into a matrix: about x, then y, then z. */
    static double[] turned(double yaw, double pitch, double roll) {
        double cy = Math.cos(Math.toRadians(yaw));
        double sy = Math.sin(Math.toRadians(yaw));
        double cp = Math.cos(Math.toRadians(pitch));
        double sp = Math.sin(Math.toRadians(pitch));
        double cr = Math.cos(Math.toRadians(roll));
        double sr = Math.sin(Math.toRadians(roll));
        double[] aboutX = {1, 0, 0, 0, cr, -sr, 0, sr, cr};
        double[] aboutY = {cp, 0, sp, 0, 1, 0, -sp, 0, cp};
        double[] aboutZ = {cy, -sy, 0, sy, cy, 0, 0, 0, 1};
        return times(aboutZ, times(aboutY, aboutX));
    }

    /** The going and turning per mm, turning times a lever; of four axes only the turn about z. */
    double[] twist(int axes, double lever) {
        double[] twist = new double[axes];
        for (int k = 0; k < 3; k++) {
            twist[k] = way[k];
            if (axes == 6) {
                twist[3 + k] = about[k] * turnPerMm * lever;
            }
        }
        if (axes == 4) {
            twist[3] = about[2] * turnPerMm * lever;
        }
        return twist;
    }

    /** The same line, going so far. */
    PlainLine withLength(double mm) {
        return new PlainLine(place, turned, way, about, turnPerMm, mm);
    }

    /** The first so many mm backwards: from their end to the beginning. */
    PlainLine back(double mm) {
        double[] other = {-way[0], -way[1], -way[2]};
        return new PlainLine(placeAt(mm), turnedAt(mm), other, about, -turnPerMm, mm);
    }
}
