package org.standclear.run.records;

import java.time.Instant;
import java.util.Set;
import org.springframework.stereotype.Component;
import org.standclear.cell.RunPeople;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.PersonId;

/** Tells cells who was in a run there. */
@Component
class RunPeopleRows implements RunPeople {

    private final RunRows runs;

    RunPeopleRows(RunRows runs) {
        this.runs = runs;
    }

    @Override
    public Set<PersonId> at(CellId cell, Instant at) {
        return runs.peopleAt(cell, at);
    }
}
