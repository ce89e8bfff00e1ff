package org.standclear.signoff;

import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.standclear.core.limits.Check;
import org.standclear.platform.ids.AnswerId;
import org.standclear.platform.ids.BookingId;
import org.standclear.platform.ids.PersonId;

/**
 * An instructor's word that one run may be released although its program's check did not pass: for this booking, this
 * answer, and not for long.
 *
 * @param checks the names of the checks that it sets aside
 * @param linesRead what its giver confirmed of the lines that the reader could not read; null where they did not
 * @param usedAt when its one run was started; null while it was not
 * @param takenBack null while nobody took it back
 */
public record Waiver(
        UUID id,
        BookingId booking,
        AnswerId answer,
        List<String> checks,
        String reason,
        @Nullable String linesRead,
        PersonId givenBy,
        Instant givenAt,
        Instant expiresAt,
        @Nullable Instant usedAt,
        @Nullable TakenBack takenBack) {

    /** What an instructor confirms who sets unread lines aside: such a line could set what the bench does not read. */
    public static final String LINES_READ = "I have read each unread line; none of them sets power, speed or override";

    public Waiver {
        checks = List.copyOf(checks);
    }

    /** Whether it can still let a run be released. */
    public boolean standsAt(Instant now) {
        return usedAt == null && takenBack == null && now.isBefore(expiresAt) && !leavesLinesUnread();
    }

    /** Whether it sets unread lines aside that nobody said to have read; it then lets nothing be released. */
    public boolean leavesLinesUnread() {
        return linesRead == null && setsUnreadLinesAside(checks);
    }

    /** Whether a waiver of these checks is one of lines that the reader could not read. */
    public static boolean setsUnreadLinesAside(List<String> checks) {
        return checks.contains(Check.COVERAGE.word());
    }

    /** What was confirmed, to stand behind the reason wherever that is printed; empty where nothing was. */
    public String confirmed() {
        return linesRead == null ? "" : " Confirmed: \"" + linesRead + ".\"";
    }

    /** Who took it back before its run, when and why. */
    public record TakenBack(PersonId by, Instant at, String reason) {}
}
