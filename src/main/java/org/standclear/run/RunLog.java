package org.standclear.run;

import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.standclear.platform.ids.BookingId;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.ids.RunId;

/** Logs what happens in a run. It never starts or stops an arm: people do that at the robot. */
public interface RunLog {

    /** Logs the start under the booking's release, which is used by it; every lapse rule and gate is asked again. */
    Logged start(BookingId booking, String code, PersonId by);

    /**
     * Logs that the e-stop was pressed or that the arm stopped itself. Never refused: whatever state the cell's booking is
     * in, the event is kept; a release that waits or is in use lapses.
     */
    RunEvent stop(CellId cell, RunEvent.Kind kind, PersonId by);

    /**
     * Logs that staff have found the cause and reset what stopped the booking's cell, before a start as well as in a run.
     * Nothing moves by that: a new release is needed. A protective stop is no precaution.
     */
    Logged reset(BookingId booking, ResetCause cause, String words, Witness by);

    /** The same on a cell where nobody is booked now. */
    Logged resetAt(CellId cell, ResetCause cause, String words, Witness by);

    /**
     * Logs that staff watched the first run of a program version on a cell, or the first after a return to service. Said
     * between the start and the end of the run, by somebody on duty who is authorised on the cell, is in no run elsewhere
     * and had no part in this one. Without it the next run is a first run again.
     */
    Logged watched(BookingId booking, Witness by);

    /** Counts one pass. */
    Logged pass(BookingId booking, PersonId by);

    /** Logs the end of the motion; a run that stands stopped is finished with the cause only. */
    Logged finish(BookingId booking, int passes, PersonId by);

    /**
     * Logs that a run that stands stopped is not taken up again, and why it was stopped. A protective stop is no precaution.
     * What a precaution took until now is credited.
     */
    Logged finishStopped(BookingId booking, int passes, ResetCause cause, PersonId by);

    /** Logs one tap of the close-out, in its order; the last one hands the cell back. */
    Logged closeOut(BookingId booking, CloseOutItem item, String choice, PersonId by);

    /** Adds a correction with its reason; the event it is about stays as it is. */
    Logged correct(RunId run, UUID event, String words, PersonId by);

    /**
     * Who vouches for a reset.
     *
     * @param account whose session or screen it came from
     * @param signer the technician or instructor
     * @param pin the signer's PIN on a shared screen; null on the signer's own device
     */
    record Witness(
            PersonId account, PersonId signer, @Nullable String pin) {}

    /** What came of it. */
    sealed interface Logged {

        /** It is in the log. */
        record Kept(RunEvent event) implements Logged {}

        /** It does not fit; says why, and who can mend it. */
        record Refused(String code, String says) implements Logged {}
    }
}
