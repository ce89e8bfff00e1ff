package org.standclear.platform.live;

import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.springframework.stereotype.Component;
import org.standclear.platform.ids.Id;
import org.standclear.platform.lab.LabOwners;
import org.standclear.platform.lab.Labs;
import org.standclear.platform.security.AccountStates.AccountState;

/** Knows which lab a cell that changed stands in, so that people of other labs do not even hear that it did. */
@Component
class CellLabs {

    private final Labs labs;
    private final LabOwners owners;

    CellLabs(Labs labs, LabOwners owners) {
        this.labs = labs;
        this.owners = owners;
    }

    /** Whether it is for that person to hear; what is no cell is for everybody. */
    boolean concerns(String cell, AccountState listener) {
        if (cell.isEmpty() || cell.equals(LiveHub.EVERYTHING) || !labs.areSeveral() || listener.isAdministrator()) {
            return true;
        }
        UUID id = Id.parse(cell);
        return owners.of(List.of(id)).getOrDefault(id, Set.of()).stream().anyMatch(listener::worksIn);
    }
}
