package org.standclear.booking;

import java.time.Instant;
import java.util.Optional;
import org.standclear.cell.Cell;
import org.standclear.people.Person;

/** A wanted booking with everything the rules look at. */
record BookingRequest(
        MakeBooking wanted, Slot slot, Cell cell, Parties parties, BookingSettings settings, Instant now) {

    Person operator() {
        return parties.person(wanted.operator()).orElseThrow();
    }

    Person by() {
        return parties.person(wanted.by()).orElseThrow();
    }

    /** "You" to people who book for themselves, the printed name to staff who book for others. */
    String you() {
        return forOneself() ? "You" : operator().printedName();
    }

    /** "You have", "Noor Candlewick has". */
    String youHave() {
        return forOneself() ? "You have" : operator().printedName() + " has";
    }

    boolean forOneself() {
        return wanted.by().equals(wanted.operator());
    }

    /** Whether so little time is left that the slot is open to all. */
    boolean isLateRelease() {
        return !slot.start().isAfter(now.plusSeconds(settings.lateReleaseHours() * 3600L));
    }

    /** Staff are outside the quotas, for themselves and when they book for others. */
    boolean isOutsideQuota() {
        return by().isLabStaff() || isLateRelease();
    }

    /** A rule's answer. */
    interface Rule {

        /** Why not; empty when the rule is not against it. */
        Optional<Refusal> refusal(BookingRequest request);
    }

    /** Which rule is against it, and what it says to people. */
    record Refusal(String rule, String says) {

        static Optional<Refusal> of(String rule, String says) {
            return Optional.of(new Refusal(rule, says));
        }
    }
}
