package org.standclear.booking;

import java.time.Duration;

/**
 * The numbers of the booking rules; an instructor changes them with a reason, and every change is kept.
 *
 * @param slotMinutes length of a slot
 * @param horizonDays how many days ahead slots can be booked
 * @param futurePerPerson bookings ahead that a person may have at a time
 * @param weekPerPerson bookings that a person may have in one week, Monday to Sunday
 * @param perAssignment bookings that a person may have for one assignment
 * @param lateReleaseHours slots that start this soon are open to all, whatever their quota
 * @param lateCancelMinutes a cancel this shortly before the start is a late one
 * @param checkInOpensMinutes how long before the start people can check in
 * @param graceMinutes how long after the start people can still check in
 * @param offerMinutes how long a slot is held for somebody on the waiting list
 * @param confirmMinutes so long before the start a booking has to be confirmed, by naming its program or by saying that one
 *     comes; 0 when nobody is asked
 */
public record BookingSettings(
        int slotMinutes,
        int horizonDays,
        int futurePerPerson,
        int weekPerPerson,
        int perAssignment,
        int lateReleaseHours,
        int lateCancelMinutes,
        int checkInOpensMinutes,
        int graceMinutes,
        int offerMinutes,
        int confirmMinutes) {

    /** What holds until somebody changes it. */
    public static final BookingSettings DEFAULTS = new BookingSettings(30, 14, 2, 4, 6, 24, 120, 10, 6);

    /** With offers of 10 minutes and without asking for confirmation. */
    public BookingSettings(
            int slotMinutes,
            int horizonDays,
            int futurePerPerson,
            int weekPerPerson,
            int perAssignment,
            int lateReleaseHours,
            int lateCancelMinutes,
            int checkInOpensMinutes,
            int graceMinutes) {
        this(
                slotMinutes,
                horizonDays,
                futurePerPerson,
                weekPerPerson,
                perAssignment,
                lateReleaseHours,
                lateCancelMinutes,
                checkInOpensMinutes,
                graceMinutes,
                10,
                0);
    }

    public BookingSettings {
        require(slotMinutes >= 10 && slotMinutes <= 240, "a slot lasts 10 to 240 minutes");
        require(horizonDays >= 1 && horizonDays <= 180, "the horizon is 1 to 180 days");
        require(futurePerPerson >= 0 && weekPerPerson >= 0 && perAssignment >= 0, "a quota is 0 or more");
        require(lateReleaseHours >= 0 && lateCancelMinutes >= 0 && checkInOpensMinutes >= 0, "a time is 0 or more");
        require(graceMinutes >= 1 && graceMinutes <= slotMinutes, "the grace is 1 minute to one slot");
        require(offerMinutes >= 3 && offerMinutes <= 240, "an offer stands 3 to 240 minutes");
        require(confirmMinutes >= 0 && confirmMinutes <= 2880, "confirmation is asked 0 to 2880 minutes before");
    }

    /** The length of a slot. */
    public Duration slotLength() {
        return Duration.ofMinutes(slotMinutes);
    }

    /** How long after the start people can still check in. */
    public Duration grace() {
        return Duration.ofMinutes(graceMinutes);
    }

    /** How long before the start people can check in. */
    public Duration checkInOpens() {
        return Duration.ofMinutes(checkInOpensMinutes);
    }

    private static void require(boolean holds, String says) {
        if (!holds) {
            throw new IllegalArgumentException(says);
        }
    }
}
