package org.standclear.demo;

import java.util.List;
import java.util.Set;
import org.springframework.context.annotation.Profile;
import org.springframework.stereotype.Component;
import org.standclear.demo.IncidentsSeed.ActionSeed;
import org.standclear.demo.IncidentsSeed.CauseSeed;
import org.standclear.demo.IncidentsSeed.FormSeed;
import org.standclear.demo.IncidentsSeed.IncidentSeed;
import org.standclear.incident.CauseBranch;
import org.standclear.incident.ControlLevel;
import org.standclear.incident.CorrectiveAction;
import org.standclear.incident.CorrectiveActions;
import org.standclear.incident.Incident;
import org.standclear.incident.IncidentClass;
import org.standclear.incident.IncidentOutcome;
import org.standclear.incident.IncidentReports;
import org.standclear.incident.IncidentReports.Report;
import org.standclear.incident.IncidentReports.Teller;
import org.standclear.incident.IncidentReviews;
import org.standclear.incident.MedicalNotes;
import org.standclear.incident.ReporterPart;
import org.standclear.incident.Severity;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.IncidentId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.time.LabTime;

/** Reports and reviews incidents for the people of the demo, through the doors that the pages use. */
@Component
@Profile("demo")
class DemoIncidents {

    private final IncidentReports reports;
    private final IncidentReviews reviews;
    private final CorrectiveActions actions;
    private final MedicalNotes medical;
    private final LabTime labTime;

    DemoIncidents(
            IncidentReports reports,
            IncidentReviews reviews,
            CorrectiveActions actions,
            MedicalNotes medical,
            LabTime labTime) {
        this.reports = reports;
        this.reviews = reviews;
        this.actions = actions;
        this.medical = medical;
        this.labTime = labTime;
    }

    IncidentId report(IncidentSeed seed, CellId cell, PersonId reporter) {
        IncidentClass kind = IncidentClass.of(seed.kind()).orElseThrow();
        ReporterPart part = ReporterPart.of(seed.part()).orElseThrow();
        var reported = reports.report(Report.brief(cell, kind, seed.sentence(), new Teller.Named(reporter, part)));
        return Expect.that(IncidentReports.Reported.Kept.class, reported, "reporting " + seed.key())
                .incident();
    }

    void fill(IncidentId id, IncidentSeed seed, FormSeed form, PersonId by) {
        Incident.Form filled = new Incident.Form(
                form.story(),
                form.atOnce(),
                Severity.of(form.actual()).orElseThrow(),
                Severity.of(form.foreseeable()).orElseThrow(),
                Set.of());
        done(reports.fill(id, IncidentClass.of(seed.kind()).orElseThrow(), filled, by), "the form");
    }

    void state(IncidentId id, String words, PersonId by) {
        done(reports.state(id, words, by), "a statement");
    }

    void review(IncidentId id, List<CauseSeed> causes, PersonId by) {
        done(reviews.take(id, by), "taking the review");
        for (CauseSeed cause : causes) {
            CauseBranch branch = CauseBranch.of(cause.branch()).orElseThrow();
            done(reviews.addCause(id, new IncidentReviews.NewCause(branch, null, cause.words()), by), "a cause");
        }
    }

    void agree(IncidentId id, ActionSeed action, PersonId owner, PersonId by) {
        done(
                reviews.agree(
                        id,
                        new IncidentReviews.NewAction(
                                action.words(),
                                ControlLevel.of(action.level()).orElseThrow(),
                                owner,
                                labTime.today().plusDays(action.dueDays())),
                        by),
                "an action");
    }

    void noteMedical(IncidentId id, String words, PersonId by) {
        done(medical.write(id, words, by), "a medical note");
    }

    void approveRestart(IncidentId id, String words, PersonId by) {
        done(reviews.approveRestart(id, words, by), "the restart");
    }

    void riskReviewed(IncidentId id, String outcome, PersonId by) {
        done(reviews.riskReviewed(id, labTime.today(), outcome, null, by), "the risk assessment");
    }

    void actionDone(IncidentId id, ActionSeed seed, String words, PersonId by) {
        CorrectiveAction action = actions.of(id).stream()
                .filter(one -> one.words().equals(seed.words()))
                .findFirst()
                .orElseThrow();
        done(actions.done(action.id(), words, by), "an action's end");
    }

    void close(IncidentId id, String learned, PersonId by) {
        done(reviews.close(id, new IncidentReviews.Closing(learned, ""), by), "closing");
    }

    private static void done(IncidentOutcome outcome, String act) {
        Expect.that(IncidentOutcome.Done.class, outcome, act);
    }
}
