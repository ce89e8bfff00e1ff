package org.standclear.booking;

import java.time.Duration;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import org.standclear.people.SlotLengths;
import org.standclear.platform.ids.CourseId;
import org.standclear.platform.ids.PersonId;

/** How long a slot of a person is: the lab's length, or longer by the course or for the person. */
@Component
class PersonsLength {

    private final SlotLengths lengths;

    PersonsLength(SlotLengths lengths) {
        this.lengths = lengths;
    }

    Duration of(PersonId operator, @Nullable CourseId course, BookingSettings settings) {
        return Duration.ofMinutes(Math.max(settings.slotMinutes(), lengths.minutesFor(operator, course)));
    }

    /** Whatever the run may be for. */
    Duration longestOf(PersonId operator, BookingSettings settings) {
        return Duration.ofMinutes(Math.max(settings.slotMinutes(), lengths.longestFor(operator)));
    }
}
