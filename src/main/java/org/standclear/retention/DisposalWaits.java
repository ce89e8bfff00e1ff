package org.standclear.retention;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.standclear.platform.ids.PersonId;

/** Keeps how many days pass between the approval of a disposal list and its carrying out. */
public interface DisposalWaits {

    /** The program's own: long enough that whoever comes once a week sees it. */
    int STANDARD = 7;

    /** At least a day: an approval is never carried out before somebody could object. */
    int FEWEST = 1;

    /** Longer than a month's list would run into the one after next. */
    int MOST = 60;

    /** The wait of a list that is approved now. */
    Wait inForce();

    /** The latest changes, latest first; empty while the program's own number holds. */
    List<Change> changes(int atMost);

    /**
     * Sets another number of days; the caller has checked that the person may.
     *
     * @param seenNumber the number of the change that the form was filled in against
     * @return false when somebody changed it meanwhile, and nothing was changed
     */
    boolean change(int days, int seenNumber, PersonId by, String reason);

    /**
     * A wait.
     *
     * @param days of a list that is approved now
     * @param number counts the changes; 0 is the program's own
     * @param shorterLater fewer days that were set and hold only when those of before have passed; empty when there are none
     */
    record Wait(int days, int number, Optional<Shorter> shorterLater) {}

    /** Fewer days, and from when they hold. */
    record Shorter(int days, Instant from) {}

    /** A number that was set, by whom, when and why. */
    record Change(int number, int days, PersonId by, Instant at, String reason) {}
}
