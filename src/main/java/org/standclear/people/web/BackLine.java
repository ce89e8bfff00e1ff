package org.standclear.people.web;

import org.standclear.people.RosterImports.Return;

/** Who came back, left or was closed when a roster was taken back. */
record BackLine(String person, String section, String state, String words, String told) {

    static BackLine of(Return one) {
        int bookings = one.toldBookings();
        return new BackLine(
                one.person(),
                one.section(),
                one.kind() == Return.Kind.BACK ? "done" : "cancelled",
                switch (one.kind()) {
                    case BACK -> "is back";
                    case ENDED -> "enrolment ended";
                    case CLOSED -> "account closed";
                },
                bookings == 0 ? "" : bookings == 1 ? "1 booking, which stays" : bookings + " bookings, which stay");
    }
}
