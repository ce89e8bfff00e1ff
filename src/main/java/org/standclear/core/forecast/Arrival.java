package org.standclear.core.forecast;

/**
 * How people spread their turns over the days before a due date: each open day is wanted so many times as much as the
 * one before it. An assumption until the lab's own requests say otherwise.
 *
 * @param leadDays open days before the due date, the due date included, over which people come
 * @param growth how many times as many people want the next open day; 1 means evenly
 */
public record Arrival(int leadDays, double growth) {

    /** Over two weeks, three quarters more each day: about two in five want the last day. */
    public static final Arrival USUAL = new Arrival(10, 1.75);

    public Arrival {
        if (!(leadDays >= 1 && leadDays <= 100 && growth >= 1 && growth <= 10)) {
            throw new IllegalArgumentException("people come over 1 to 100 days, growing 1 to 10 times a day");
        }
    }

    /** The share of turns wanted on each of that many open days, the due date last; together 1. */
    double[] shares(int days) {
        double[] shares = new double[days];
        double sum = 0;
        for (int day = 0; day < days; day++) {
            shares[day] = Math.pow(growth, day);
            sum += shares[day];
        }
        for (int day = 0; day < days; day++) {
            shares[day] /= sum;
        }
        return shares;
    }
}
