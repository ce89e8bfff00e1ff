package org.standclear.people;

import java.time.Instant;
import java.util.List;
import org.standclear.platform.ids.PersonId;

/** Which technicians and instructors are on duty in the lab; only staff on duty release. */
public interface DutyRoster {

    /** Whether the person is on duty at that instant. */
    boolean onDuty(PersonId person, Instant at);

    /** Who is on duty at that instant, by printed name. */
    List<Person> onDuty(Instant at);
}
