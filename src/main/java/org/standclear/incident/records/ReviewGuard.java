package org.standclear.incident.records;

import java.util.Optional;
import java.util.function.Function;
import org.springframework.stereotype.Component;
import org.standclear.incident.Incident;
import org.standclear.incident.IncidentOutcome;
import org.standclear.incident.IncidentState;
import org.standclear.people.People;
import org.standclear.people.Person;
import org.standclear.platform.ids.IncidentId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.security.Role;

/** Lets only somebody review who is an instructor or a safety reviewer and had no part in what happened. */
@Component
class ReviewGuard {

    private final IncidentRows rows;
    private final People people;

    ReviewGuard(IncidentRows rows, People people) {
        this.rows = rows;
        this.people = people;
    }

    Optional<String> whyNot(Incident incident, PersonId by) {
        Person person = people.find(by).orElse(null);
        if (person == null || !(person.is(Role.INSTRUCTOR) || person.is(Role.REVIEWER))) {
            return Optional.of("An instructor or the safety reviewer reviews an incident.");
        }
        return incident.involves(by)
                ? Optional.of(
                        "You had a part in it, or reported it without saying that you had none. Another instructor"
                                + " or the safety reviewer reviews it.")
                : Optional.empty();
    }

    boolean isSafetyReviewer(PersonId by) {
        return people.find(by).filter(person -> person.is(Role.REVIEWER)).isPresent();
    }

    boolean isInstructor(PersonId by) {
        return people.find(by).filter(person -> person.is(Role.INSTRUCTOR)).isPresent();
    }

    /** Runs an act of the review on the locked incident; refused on a closed one. */
    IncidentOutcome open(IncidentId id, PersonId by, Function<Incident, IncidentOutcome> act) {
        Incident incident = rows.lock(id).orElseThrow();
        Optional<String> no = whyNot(incident, by);
        if (no.isPresent()) {
            return new IncidentOutcome.Refused("", no.get());
        }
        return incident.state() == IncidentState.CLOSED
                ? new IncidentOutcome.Refused("", "The incident is closed. An action that did not help opens it again.")
                : act.apply(incident);
    }
}
