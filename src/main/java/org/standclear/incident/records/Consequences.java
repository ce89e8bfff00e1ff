package org.standclear.incident.records;

import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import org.standclear.cell.CellStates;
import org.standclear.cell.CellTag;
import org.standclear.incident.Incident;
import org.standclear.incident.IncidentClass;
import org.standclear.incident.IncidentStep;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.lab.CellNames;
import org.standclear.run.Run;
import org.standclear.run.Runs;
import org.standclear.signoff.CellLapses;
import org.standclear.signoff.LapseRule;
import org.standclear.signoff.Part;

/** What an incident's class asks for, in the transaction that sets the class: lapses, a hold, frozen evidence. */
@Component
class Consequences {

    private final CellLapses lapses;
    private final CellStates states;
    private final Runs runs;
    private final CellNames cellNames;
    private final EvidenceRows evidence;
    private final EvidencePieces pieces;
    private final ReviewRows reviews;
    private final Steps steps;

    Consequences(
            CellLapses lapses,
            CellStates states,
            Runs runs,
            CellNames cellNames,
            EvidenceRows evidence,
            EvidencePieces pieces,
            ReviewRows reviews,
            Steps steps) {
        this.lapses = lapses;
        this.states = states;
        this.runs = runs;
        this.cellNames = cellNames;
        this.evidence = evidence;
        this.pieces = pieces;
        this.reviews = reviews;
        this.steps = steps;
    }

    /** Takes the locks that a hold takes, before anything is stored that refers to the cell. */
    void lock(CellId cell) {
        lapses.lock(cell);
    }

    /** Holds the cell for an incident whose class asks for it now and did not before; always by somebody. */
    void hold(Incident incident, PersonId by) {
        String what = "incident " + incident.number() + ": " + incident.kind().words();
        lapses.lapseAll(
                incident.cell(),
                LapseRule.INCIDENT,
                "I" + what.substring(1) + " on " + cellNames.all().getOrDefault(incident.cell(), "the cell") + ".",
                by);
        states.stop(new CellStates.StopCell(
                incident.cell(),
                CellTag.Kind.HOLD,
                by,
                "incident " + incident.number() + " is reviewed",
                operator(incident)));
        steps.take(
                incident,
                new Steps.Taken(
                        IncidentStep.Kind.CELL_HELD,
                        "The cell is held; every check and release on it lapsed.",
                        "The cell is held until the restart is approved.",
                        by));
    }

    private @Nullable PersonId operator(Incident incident) {
        return incident.run() == null
                ? null
                : runs.find(incident.run())
                        .map(run -> run.inPart(Part.OPERATOR))
                        .filter(operators -> !operators.isEmpty())
                        .map(operators -> operators.get(operators.size() - 1))
                        .orElse(null);
    }

    /** What a class asks for that the class before did not. */
    void rise(Incident before, Incident after, PersonId by) {
        boolean graver = after.kind().compareTo(before.kind()) > 0;
        // what was approved was the restart after the class of then
        boolean again = graver && reviews.restart(after.id()).isPresent();
        if (after.kind().holdsCell() && (!before.kind().holdsCell() || again)) {
            hold(after, by);
        }
        if (after.kind().freezesEvidence()) {
            freeze(after, after.kind());
        }
    }

    /** Freezes the evidence, once; later classes add nothing to what stood there at first. */
    void freeze(Incident incident, IncidentClass because) {
        if (evidence.find(incident.id()).isPresent()) {
            return;
        }
        Run run = incident.run() == null ? null : runs.find(incident.run()).orElse(null);
        int frozen = evidence.freeze(incident.id(), because.label(), pieces.now(incident.cell(), run), steps.now());
        steps.take(
                incident,
                new Steps.Taken(
                        IncidentStep.Kind.EVIDENCE_FROZEN,
                        frozen + " pieces of evidence are frozen, each named by its hash.",
                        "The evidence of the run is frozen.",
                        null));
    }
}
