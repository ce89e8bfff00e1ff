package org.standclear.signoff;

import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.standclear.platform.ids.BookingId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.ids.ReleaseId;

/** Releases as the run log uses them. */
public interface Releases {

    /** The latest release of the booking, lapsed or not. */
    Optional<Release> latest(BookingId booking);

    /** All releases of the booking, latest first. */
    List<Release> of(BookingId booking);

    /**
     * Uses the booking's release for a start, after asking every lapse rule and gate again in the running transaction.
     * When a rule makes it lapse, the lapse is kept if the caller lets the transaction commit.
     *
     * @param code as the start form had it, so that a form from before a lapse starts nothing
     */
    StartPermission useForStart(BookingId booking, String code, PersonId by);

    /** Lapses a release that is not lapsed yet, for what the run log or a person reports; the booking stays where it is. */
    void lapse(ReleaseId release, LapseRule rule, String because, @Nullable PersonId by);

    /** Takes back a release that was not started; the booking goes back to {@code ready}. False when there is none. */
    boolean withdraw(BookingId booking, LapseRule rule, String because, PersonId by);

    /** The next bench list of the booking is the full one, for a reason that stays in the record. */
    void askFullList(BookingId booking, String because);

    /** A pass came to its end under the booking's latest start: this program version has run on this cell version. */
    void ranThrough(BookingId booking);

    /** The run that used it is over: operator, attendant and cell are free for another release. */
    void end(ReleaseId release);

    /** What came of asking to start. */
    sealed interface StartPermission {

        /** The release is now used by this start. */
        record Given(Release release) implements StartPermission {}

        /** No start: says why and who can mend it. */
        record Refused(String code, String says) implements StartPermission {}
    }
}
