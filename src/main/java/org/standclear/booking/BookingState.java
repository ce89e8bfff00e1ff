package org.standclear.booking;

/** Where a booking is in its life; the order of the first eight is the order of a run that goes well. */
public enum BookingState {
    BOOKED("booked"),
    CHECKED("checked"),
    READY("ready"),
    RELEASED("released"),
    RUNNING("running"),
    STOPPED("stopped"),
    FINISHED("finished"),
    CLOSED_OUT("closed out"),
    CANCELLED("cancelled"),
    LATE_CANCELLED("late cancelled"),
    MISSED("missed"),
    MOVED_BY_STAFF("moved by staff");

    private final String words;

    BookingState(String words) {
        this.words = words;
    }

    /** The state as people say it. */
    public String words() {
        return words;
    }

    /** Whether the booking still holds its cell, operator and attendant. */
    public boolean holdsItsSlot() {
        return ordinal() <= CLOSED_OUT.ordinal();
    }

    /** Whether the arm may have moved and the cell has not been handed back. */
    public boolean awaitsCloseOut() {
        return this == RUNNING || this == STOPPED || this == FINISHED;
    }
}
