package org.standclear.signoff.records;

import java.time.Instant;
import java.util.Arrays;
import java.util.Optional;
import org.springframework.stereotype.Component;
import org.standclear.cell.ToolReaders;
import org.standclear.people.Authorisations;
import org.standclear.people.Duty;
import org.standclear.people.DutyRoster;
import org.standclear.people.People;
import org.standclear.people.Person;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.PersonId;

/** Tells cells who may read a tool there: staff, or whoever is authorised at that cell. */
@Component
class ReadersOfTools implements ToolReaders {

    private final People people;
    private final Authorisations authorisations;
    private final DutyRoster duty;

    ReadersOfTools(People people, Authorisations authorisations, DutyRoster duty) {
        this.people = people;
        this.authorisations = authorisations;
        this.duty = duty;
    }

    @Override
    public Optional<String> refusal(CellId cell, PersonId reader, Instant at) {
        Person person = people.find(reader).filter(Person::active).orElse(null);
        boolean may = person != null && (person.isLabStaff() || isAuthorised(cell, reader, at));
        return may
                ? Optional.empty()
                : Optional.of("A tool is read by lab staff or by somebody authorised at this cell.");
    }

    @Override
    public boolean isStaffOnDuty(CellId cell, PersonId reader, Instant at) {
        return people.find(reader).filter(Person::isLabStaff).isPresent()
                && duty.onDuty(reader, at)
                && isAuthorised(cell, reader, at);
    }

    private boolean isAuthorised(CellId cell, PersonId person, Instant at) {
        return Arrays.stream(Duty.values()).anyMatch(one -> authorisations.holds(person, one, cell, at));
    }
}
