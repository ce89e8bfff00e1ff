package org.standclear.demo;

import java.util.List;
import java.util.Objects;
import org.springframework.context.annotation.Profile;
import org.springframework.stereotype.Component;
import org.standclear.booking.Turns;
import org.standclear.cell.CellFeatures;
import org.standclear.people.Criteria;
import org.standclear.people.Teams;
import org.standclear.platform.ids.AssignmentId;
import org.standclear.platform.ids.PersonId;

/** What the demo's courses ask of runs and cells, and who works with whom. */
@Component
@Profile("demo")
class DemoCourseWork {

    private final Criteria criteria;
    private final CellFeatures features;
    private final Teams teams;
    private final Turns turns;

    DemoCourseWork(Criteria criteria, CellFeatures features, Teams teams, Turns turns) {
        this.criteria = criteria;
        this.features = features;
        this.teams = teams;
        this.turns = turns;
    }

    void write(Roster roster) {
        PersonId ines = roster.person("ines");
        features.add(roster.cell("Avocet"), CellFeatures.LOWER_BENCH, ines);
        features.add(roster.cell("Dunlin"), CellFeatures.LOWER_BENCH, ines);
        features.add(roster.cell("Bittern"), "camera above the plate", ines);
        Roster.Studies studies = Objects.requireNonNull(roster.studies(roster.person("noor")));
        AssignmentId pegs = Objects.requireNonNull(studies.assignment());
        criteria.add(pegs, "the peg goes in without a touch", 4, ines);
        criteria.add(pegs, "the plate lies flat when it is let go", 3, ines);
        criteria.add(pegs, "the plate sits on both pins", 2, ines);
        pair(roster, "noor", "mateo", "A", ines);
        pair(roster, "yuki", "saoirse", "B", ines);
        pair(roster, "kofi", "leilani", "C", ines);
        pair(roster, "dmitri", "amara", "D", ines);
        pair(roster, "pilar", "arjun", "E", ines);
        turns.giveMakeUp(roster.person("wren"), "the power was away during the turn", ines);
    }

    /** Where both are of the same section. */
    private void pair(Roster roster, String one, String other, String team, PersonId by) {
        String section = roster.seed(roster.person(one)).section();
        if (section.equals(roster.seed(roster.person(other)).section())) {
            teams.put(roster.section(section), team, List.of(roster.person(one), roster.person(other)), by);
        }
    }
}
