package org.standclear.booking;

import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import org.standclear.people.Authorisation;
import org.standclear.people.Authorisations;
import org.standclear.people.Duty;
import org.standclear.people.People;
import org.standclear.people.Person;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.PersonId;

/** The people of one booking and what they may do, fetched together. */
record Parties(Map<PersonId, Person> people, Map<PersonId, List<Authorisation>> authorisations) {

    Optional<Person> person(PersonId id) {
        return Optional.ofNullable(people.get(id));
    }

    /** Whether the person holds the duty for the cell at that instant; inactive people hold none. */
    boolean hold(PersonId id, Duty duty, CellId cell, Instant at) {
        return person(id).filter(Person::active).isPresent()
                && authorisations.getOrDefault(id, List.of()).stream()
                        .anyMatch(one -> one.duty() == duty && one.covers(cell, at));
    }

    /** Fetches them. */
    @Component
    static class Lookup {

        private final People people;
        private final Authorisations authorisations;

        Lookup(People people, Authorisations authorisations) {
            this.people = people;
            this.authorisations = authorisations;
        }

        Parties of(@Nullable PersonId... ids) {
            Set<PersonId> named = Stream.of(ids).filter(id -> id != null).collect(Collectors.toSet());
            return new Parties(people.all(named), authorisations.ofAll(named));
        }
    }
}
