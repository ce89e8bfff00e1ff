package org.standclear.incident.web;

import org.springframework.stereotype.Component;
import org.standclear.incident.Incident;
import org.standclear.incident.Incidents;
import org.standclear.platform.ids.IncidentId;
import org.standclear.platform.security.Role;
import org.standclear.platform.security.SignedInPerson;
import org.standclear.platform.web.NotFoundException;

/** Who may see which incident: staff and safety reviewers all, anybody else what they reported with their name. */
@Component
class IncidentAccess {

    private final Incidents incidents;

    IncidentAccess(Incidents incidents) {
        this.incidents = incidents;
    }

    /** The incident, if it is the person's to see; else it is not found. */
    Incident visible(IncidentId id, SignedInPerson me) {
        return incidents
                .find(id)
                .filter(incident -> seesAll(me) || me.id().equals(incident.reporter()))
                .orElseThrow(() -> new NotFoundException("incident"));
    }

    static boolean seesAll(SignedInPerson me) {
        return me.isLabStaff() || me.is(Role.REVIEWER);
    }

    static boolean reviews(SignedInPerson me) {
        return me.is(Role.INSTRUCTOR) || me.is(Role.REVIEWER);
    }
}
