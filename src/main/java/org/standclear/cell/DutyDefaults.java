package org.standclear.cell;

import java.time.Instant;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.PersonId;

/** How often inspections and reviews come round on cells that are new; a cell that is there keeps what it has. */
public interface DutyDefaults {

    /** Once a year; common practice for machines, no standard says so for every cell. */
    int COMMON_PRACTICE_DAYS = 365;

    /** What a new cell gets now, one of each duty. */
    List<Default> inForce();

    /** What was set and by whom, latest first. */
    List<Default> history();

    /** Sets what new cells get; the caller has checked that the person may. */
    void change(RecurringDuty duty, int days, String reason, PersonId by);

    /** Gives a new cell its duties, due one interval from now; joins the running transaction. */
    void begin(CellId cell, PersonId by);

    /**
     * What a new cell gets.
     *
     * @param days 0 when nothing comes round by itself
     * @param by null while nobody has changed it
     */
    record Default(
            RecurringDuty duty,
            int days,
            String reason,
            @Nullable PersonId by,
            @Nullable Instant at) {}
}
