package org.standclear.incident.web;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import org.standclear.incident.CorrectiveActions;
import org.standclear.incident.FrozenEvidence;
import org.standclear.incident.Incident;
import org.standclear.incident.IncidentClass;
import org.standclear.incident.IncidentPhotos;
import org.standclear.incident.IncidentReviews;
import org.standclear.incident.IncidentStep;
import org.standclear.incident.Incidents;
import org.standclear.incident.MedicalNotes;
import org.standclear.incident.RecordableOutcome;
import org.standclear.incident.RiskReview;
import org.standclear.incident.rules.AuthorityQuestions;
import org.standclear.incident.web.IncidentView.EvidenceView;
import org.standclear.incident.web.IncidentView.Fact;
import org.standclear.incident.web.IncidentView.PhotoView;
import org.standclear.incident.web.IncidentView.PieceView;
import org.standclear.incident.web.IncidentView.StepView;
import org.standclear.people.People;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.security.SignedInPerson;
import org.standclear.platform.time.LabTime;

/** Puts an incident into words for those who work on it. */
@Component
class IncidentViews {

    private final Incidents incidents;
    private final IncidentReviews reviews;
    private final CorrectiveActions actions;
    private final FrozenEvidence evidence;
    private final IncidentPhotos photos;
    private final MedicalNotes medical;
    private final ReporterViews reporterViews;
    private final ActionViews actionViews;
    private final People people;
    private final LabTime labTime;

    IncidentViews(
            Incidents incidents,
            IncidentReviews reviews,
            CorrectiveActions actions,
            FrozenEvidence evidence,
            IncidentPhotos photos,
            MedicalNotes medical,
            ReporterViews reporterViews,
            ActionViews actionViews,
            People people,
            LabTime labTime) {
        this.incidents = incidents;
        this.reviews = reviews;
        this.actions = actions;
        this.evidence = evidence;
        this.photos = photos;
        this.medical = medical;
        this.reporterViews = reporterViews;
        this.actionViews = actionViews;
        this.people = people;
        this.labTime = labTime;
    }

    IncidentView of(Incident incident, SignedInPerson me) {
        Incident.Form form = incident.form();
        String whyNot = reviews.whyNot(incident, me.id()).orElse("");
        return new IncidentView(
                incident.id().toString(),
                title(incident) + ", " + incident.state().words(),
                "Reported " + labTime.full(incident.reportedAt()) + " by " + reporter(incident),
                incident.sentence(),
                ReporterViews.mark(incident),
                incident.state().words(),
                facts(incident),
                harm(incident),
                form == null ? "" : form.story(),
                form == null ? "" : form.doneAtOnce(),
                reporterViews.form(incident),
                incident.kind().isToldAtOnce(),
                incident.kind() == IncidentClass.REPORTABLE ? AuthorityQuestions.list() : List.of(),
                incident.run() == null ? "" : "/runs/" + incident.run(),
                evidence(incident),
                photos(incident, null),
                CauseTree.of(incidents.causes(incident.id())),
                actions.of(incident.id()).stream()
                        .map(action -> actionViews.of(action, me))
                        .toList(),
                incidents.riskReviews(incident.id()).stream().map(this::risk).toList(),
                restart(incident),
                incident.holdsCell() && incidents.restart(incident.id()).isEmpty(),
                whyNot.isEmpty(),
                IncidentAccess.reviews(me) ? whyNot : "",
                IncidentAccess.reviews(me) ? medical.count(incident.id()) : -1,
                incidents.steps(incident.id()).stream().map(this::step).toList());
    }

    String title(Incident incident) {
        return "Incident " + incident.number() + ": " + incident.kind().words() + " on " + reporterViews.cell(incident);
    }

    private String reporter(Incident incident) {
        return incident.reporter() == null ? "somebody without a name" : people.printedName(incident.reporter());
    }

    private List<Fact> facts(Incident incident) {
        List<Fact> facts = new ArrayList<>();
        facts.add(new Fact("Cell", reporterViews.cell(incident)));
        facts.add(new Fact("Class", incident.kind().label()));
        facts.add(new Fact("Happened", labTime.full(incident.happenedAt())));
        facts.add(new Fact("Form", reporterViews.form(incident).words()));
        facts.add(new Fact("Review", reviews.level(incident).words()));
        facts.add(new Fact(
                "Reviewed by", incident.reviewer() == null ? "nobody yet" : people.printedName(incident.reviewer())));
        facts.add(new Fact("Had a part in it", names(incident.involved())));
        return facts;
    }

    private String names(List<PersonId> involved) {
        return involved.isEmpty()
                ? "nobody named"
                : involved.stream().map(people::printedName).collect(Collectors.joining(", "));
    }

    private static List<Fact> harm(Incident incident) {
        Incident.Form form = incident.form();
        if (form == null) {
            return List.of();
        }
        String outcomes = form.outcomes().isEmpty()
                ? "none of them"
                : form.outcomes().stream()
                        .sorted()
                        .map(RecordableOutcome::words)
                        .collect(Collectors.joining(", "));
        return List.of(
                new Fact("It was", form.actual().words()),
                new Fact("It could reasonably have been", form.foreseeable().words()),
                new Fact("After 29 CFR 1904.7 and 1904.39, as vocabulary", outcomes));
    }

    private @Nullable EvidenceView evidence(Incident incident) {
        FrozenEvidence.Recomputed found = evidence.of(incident.id()).orElse(null);
        if (found == null) {
            return null;
        }
        List<PieceView> pieces = found.pieces().stream()
                .map(piece -> new PieceView(piece.number(), piece.kind(), piece.words(), piece.sha256(), piece.holds()))
                .toList();
        String frozen = pieces.size() + " pieces frozen " + labTime.full(found.frozenAt()) + ", " + found.because()
                + "; recomputed now: ";
        String line = found.holds()
                ? frozen + "all as they were."
                : frozen
                        + found.pieces().stream()
                                .filter(piece -> !piece.holds())
                                .findFirst()
                                .map(piece -> "piece " + piece.number() + " (" + piece.words()
                                        + ") is not as it was. Tell the safety reviewer and the administrator.")
                                .orElse("the list of pieces itself is not as it was. Tell the safety reviewer and the"
                                        + " administrator.");
        return new EvidenceView(found.holds(), line, found.sha256(), pieces);
    }

    /** The photos; of one person only when one is given. */
    List<PhotoView> photos(Incident incident, @Nullable PersonId addedBy) {
        return photos.of(incident.id()).stream()
                .filter(photo -> addedBy == null || addedBy.equals(photo.addedBy()))
                .map(photo -> new PhotoView(
                        "/incidents/" + incident.id() + "/photos/" + photo.id(),
                        photo.caption().isEmpty() ? "Photo of " + labTime.full(photo.addedAt()) : photo.caption(),
                        photo.width(),
                        photo.height()))
                .toList();
    }

    private Fact risk(RiskReview review) {
        String version = review.cellVersion() == null
                ? "; the cell stays as it is"
                : "; cell version " + review.cellVersion() + " came out of it";
        return new Fact(
                "Reviewed " + labTime.day(review.reviewedOn()),
                review.outcome() + version + " (" + people.printedName(review.notedBy()) + ")");
    }

    private String restart(Incident incident) {
        if (!incident.kind().holdsCell()) {
            return "";
        }
        return incidents
                .restart(incident.id())
                .map(restart -> "Restart approved " + labTime.full(restart.at()) + " by "
                        + people.printedName(restart.by()) + ": " + restart.words())
                .orElse("Restart not approved: the cell does not return to service.");
    }

    private StepView step(IncidentStep step) {
        PersonId by = step.by();
        return new StepView(
                labTime.full(step.at()),
                labTime.iso(step.at()),
                step.kind().words(),
                step.words(),
                by == null ? "" : people.printedName(by));
    }
}
