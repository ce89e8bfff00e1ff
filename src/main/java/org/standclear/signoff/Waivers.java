package org.standclear.signoff;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.standclear.check.CheckWords;
import org.standclear.platform.ids.AnswerId;
import org.standclear.platform.ids.BookingId;
import org.standclear.platform.ids.PersonId;

/** Instructors' waivers of failed checks: one run, with a reason and an expiry; the hard items are never waived. */
public interface Waivers {

    /** What a waiver for the booking would be about, brought up to date first. */
    Question question(BookingId booking);

    /** Gives a waiver, or says what stands against it. */
    Given give(GiveWaiver wanted);

    /** Takes a waiver back before its run; a release that rests on it lapses. */
    Given takeBack(TakeBack wanted);

    /** The waiver that lets the booking's run be released now. */
    Optional<Waiver> standing(BookingId booking);

    /** All waivers that the booking ever had, latest first. */
    List<Waiver> of(BookingId booking);

    /**
     * What would be waived.
     *
     * @param blocking the findings in the way, each by its check and what it says
     * @param refusal why no waiver can be given now; empty when one can
     */
    record Question(Preparation.Prepared prepared, List<Blocking> blocking, String refusal) {

        public Question {
            blocking = List.copyOf(blocking);
        }
    }

    /**
     * A finding that keeps the program from being within limits.
     *
     * @param check its name in answers
     * @param outcome outside or not-checkable
     * @param hard whether no waiver ever covers it
     */
    record Blocking(String check, String outcome, String says, boolean hard) {

        /** The check as people say it. */
        public String words() {
            return CheckWords.check(check);
        }
    }

    /**
     * What the instructor wants.
     *
     * @param answer the answer that the page showed; a waiver never covers another one
     * @param expires null when it could not be read
     * @param linesRead the sentence that is confirmed of the unread lines, as it was shown; null when none was. Only
     *     {@link Waiver#LINES_READ} counts
     */
    record GiveWaiver(
            BookingId booking,
            @Nullable AnswerId answer,
            String reason,
            @Nullable Instant expires,
            @Nullable String linesRead,
            PersonId by) {}

    /** Which waiver an instructor takes back, and why. */
    record TakeBack(BookingId booking, @Nullable UUID waiver, String reason, PersonId by) {}

    /** What came of giving it or taking it back. */
    sealed interface Given {

        /** It stands, or no longer stands, as was wanted. */
        record Kept(Waiver waiver) implements Given {}

        /** It was not done; says why, and with which field: {@code reason}, {@code expires}, {@code linesRead}, or empty. */
        record Refused(String field, String says) implements Given {}
    }
}
