package org.standclear.people.accounts;

import java.util.List;
import org.springframework.stereotype.Component;
import org.standclear.platform.lab.LabThings;

/** Which lab people and what is planned for them belong to; a person may belong to several. */
@Component
class PeopleThings implements LabThings {

    @Override
    public List<Kind> kinds() {
        return List.of(
                new Kind("labs", "", "t.id"),
                new Kind("people", "join person_roles r on r.person_id = t.id", "r.lab_id", false),
                // an administrator is one in every lab
                new Kind(
                        "people",
                        "join person_roles r on r.person_id = t.id and r.role = 'ADMINISTRATOR' cross join labs l",
                        "l.id",
                        false),
                Kind.own("authorisations"),
                Kind.own("duty_periods"),
                Kind.own("courses"),
                Kind.of("sections", "course_id", "courses"),
                Kind.of("assignments", "course_id", "courses"),
                Kind.of("assignment_criteria", "assignment_id", "assignments", "course_id", "courses"),
                Kind.of("course_slot_lengths", "course_id", "courses"),
                Kind.of("team_members", "section_id", "sections", "course_id", "courses"),
                Kind.own("roster_imports"));
    }
}
