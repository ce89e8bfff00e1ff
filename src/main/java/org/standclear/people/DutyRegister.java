package org.standclear.people;

import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.standclear.platform.ids.PersonId;

/** Plans when technicians and instructors are on duty. */
public interface DutyRegister {

    /** Plans a period; {@code by} is null when the application does it by itself. */
    Outcome plan(PersonId person, Instant from, Instant until, @Nullable PersonId by);

    /** Takes a period off the plan. */
    Outcome remove(UUID period, PersonId by);

    /** The periods that touch a span, earliest first. */
    List<Period> between(Instant from, Instant until);

    /**
     * Somebody's time on duty.
     *
     * @param plannedBy null when the application planned it by itself
     */
    record Period(
            UUID id,
            Person person,
            Instant from,
            Instant until,
            @Nullable PersonId plannedBy) {

        /** Whether nobody else had a part in it. */
        public boolean plannedByThemselves() {
            return person.id().equals(plannedBy);
        }
    }

    /** What came of it. */
    sealed interface Outcome {

        /** It is stored under that id. */
        record Done(UUID period) implements Outcome {}

        /** Nothing was stored; says why, and for which field: {@code person}, {@code until}, ... */
        record Refused(String field, String says) implements Outcome {}
    }
}
