package org.standclear.incident.records;

import java.util.Optional;
import org.springframework.stereotype.Component;
import org.standclear.cell.ReturnCondition;
import org.standclear.incident.Incident;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.PersonId;

/** A cell with an open incident of class 3 or above returns to service when the restart is approved, by the uninvolved. */
@Component
class OpenIncidentGate implements ReturnCondition {

    private final IncidentRows incidents;
    private final ReviewRows reviews;

    OpenIncidentGate(IncidentRows incidents, ReviewRows reviews) {
        this.incidents = incidents;
        this.reviews = reviews;
    }

    @Override
    public Optional<String> refusal(CellId cell, PersonId by) {
        for (Incident incident : incidents.holding(cell)) {
            String which =
                    "Incident " + incident.number() + ", " + incident.kind().label();
            if (reviews.restart(incident.id()).isEmpty()) {
                return Optional.of(which + ", is open and its restart is not approved. An instructor or the safety"
                        + " reviewer who had no part in it approves it on the page of the incident.");
            }
            if (incident.involves(by)) {
                return Optional.of("You had a part in incident " + incident.number()
                        + ". A technician or an instructor who was not involved puts the cell back.");
            }
        }
        return Optional.empty();
    }
}
