package org.standclear.signoff;

import java.util.List;
import java.util.Optional;
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
     */
    StartPermission useForStart(BookingId booking, PersonId by);

    /** Lapses a release that is not lapsed yet, for a reason named in the record. */
    void lapse(ReleaseId release, String code, String because);

    /** What came of asking to start. */
    sealed interface StartPermission {

        /** The release is now used by this start. */
        record Given(Release release) implements StartPermission {}

        /** No start: says why and who can mend it. */
        record Refused(String code, String says) implements StartPermission {}
    }
}
