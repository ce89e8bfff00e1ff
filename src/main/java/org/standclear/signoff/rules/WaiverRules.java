package org.standclear.signoff.rules;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.standclear.booking.Booking;
import org.standclear.booking.BookingState;
import org.standclear.check.StoredAnswer;
import org.standclear.people.Person;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.security.Role;
import org.standclear.signoff.Waiver;
import org.standclear.signoff.Waivers.Blocking;
import org.standclear.signoff.Waivers.Given;

/**
 * What stands against a waiver. Attendant, authorisation, the cell's state and the people's identity are gates of their
 * own, which no waiver touches; of the checks the power mode is never waived.
 */
public final class WaiverRules {

    private static final Set<String> HARD = Set.of("power-mode");

    private static final int REASON_LEAST = 10;
    private static final int REASON_MOST = 1000;

    private WaiverRules() {}

    /** Whether no waiver ever covers the check. */
    public static boolean isHard(String check) {
        return HARD.contains(check);
    }

    /** Why the booking's answer cannot be waived now, whoever asks; empty when it can. */
    public static String againstAny(
            Booking booking, @Nullable StoredAnswer answer, List<Blocking> blocking, boolean standing, Instant now) {
        if (answer == null) {
            return "There is no answer of the check to waive: attach a program that can be read first.";
        }
        if (answer.verdict() == StoredAnswer.Verdict.WITHIN) {
            return "The program is within limits: there is nothing to waive.";
        }
        String hard = blocking.stream()
                .filter(Blocking::hard)
                .map(Blocking::check)
                .distinct()
                .collect(Collectors.joining(", "));
        if (!hard.isEmpty()) {
            return "Never waived: " + hard + ". Mend the program or its declaration.";
        }
        if (standing) {
            return "A waiver stands already.";
        }
        if (!now.isBefore(booking.end())) {
            return "The slot is over.";
        }
        return booking.state() == BookingState.BOOKED
                ? ""
                : "The booking is " + booking.state().words() + " now; a waiver is given before that.";
    }

    /** Why this person does not give it. */
    public static Optional<Given.Refused> againstGiver(Person giver, Booking booking, PersonId author) {
        if (!giver.is(Role.INSTRUCTOR)) {
            return refused("", "Only an instructor gives a waiver.");
        }
        if (giver.id().equals(author)) {
            return refused("", "You wrote this program: another instructor decides.");
        }
        return booking.involves(giver.id())
                ? refused("", "You have a part in this run: another instructor decides.")
                : Optional.empty();
    }

    /** What is wrong with the reason or the expiry. */
    public static Optional<Given.Refused> againstTerms(
            String reason, @Nullable Instant expires, Booking booking, Instant now) {
        if (!isReason(reason)) {
            return refused(
                    "reason",
                    "Say why this one run may go on, in " + REASON_LEAST + " to " + REASON_MOST
                            + " characters; it stands on the release card.");
        }
        if (expires == null) {
            return refused("expires", "Write a time such as 14:30.");
        }
        if (!expires.isAfter(now)) {
            return refused("expires", "That time is past: choose one before the slot ends.");
        }
        return expires.isAfter(booking.end())
                ? refused("expires", "A waiver is for one run: it expires with its slot at the latest.")
                : Optional.empty();
    }

    /** Nobody sets a line aside that nobody says to have read, in this very sentence: it could set what the bench does not look at. */
    public static Optional<Given.Refused> againstUnreadLines(List<String> checks, @Nullable String linesRead) {
        return Waiver.LINES_READ.equals(linesRead) || !Waiver.setsUnreadLinesAside(checks)
                ? Optional.empty()
                : refused(
                        "linesRead",
                        "Read each line that the reader could not read, and confirm that none of them sets power,"
                                + " speed or override. If one does, mend the program.");
    }

    /** Why it cannot be taken back; any instructor may, as anybody may stop a run. */
    public static Optional<Given.Refused> againstTakingBack(
            Person person, @Nullable Waiver waiver, String reason, Instant now) {
        if (!person.is(Role.INSTRUCTOR)) {
            return refused("", "Only an instructor takes a waiver back. Hold the cell, or do not release.");
        }
        if (waiver == null) {
            return refused("", "This booking has no such waiver.");
        }
        if (waiver.usedAt() != null) {
            return refused("", "Its run has been started: the waiver is used up. Stop the run at the bench instead.");
        }
        if (waiver.takenBack() != null) {
            return refused("", "It was taken back already.");
        }
        if (waiver.leavesLinesUnread()) {
            return refused("", "It does not count already: nobody confirmed the unread lines.");
        }
        if (!waiver.standsAt(now)) {
            return refused("", "It has expired already.");
        }
        return isReason(reason)
                ? Optional.empty()
                : refused(
                        "takeBackReason",
                        "Say why it is taken back, in " + REASON_LEAST + " to " + REASON_MOST + " characters.");
    }

    private static boolean isReason(String reason) {
        int length = reason.strip().length();
        return length >= REASON_LEAST && length <= REASON_MOST;
    }

    private static Optional<Given.Refused> refused(String field, String says) {
        return Optional.of(new Given.Refused(field, says));
    }
}
