package org.standclear.booking;

import java.util.Optional;
import org.springframework.stereotype.Component;
import org.standclear.booking.BookingRequest.Refusal;
import org.standclear.people.Person;
import org.standclear.platform.time.LabTime;

/** Nobody takes single slots of days that a plan is going to share out; lab staff may, and accept the plan that does. */
@Component
class SharedOutRule implements BookingRequest.Rule {

    private final SharedDays sharedDays;
    private final LabTime labTime;

    SharedOutRule(SharedDays sharedDays, LabTime labTime) {
        this.sharedDays = sharedDays;
        this.labTime = labTime;
    }

    @Override
    public Optional<Refusal> refusal(BookingRequest request) {
        if (request.parties()
                .person(request.wanted().by())
                .filter(Person::isLabStaff)
                .isPresent()) {
            return Optional.empty();
        }
        return sharedDays
                .on(labTime.date(request.slot().start()))
                .map(day -> new Refusal("shared-out", labTime.day(request.slot().start()) + ": " + day.says()));
    }
}
