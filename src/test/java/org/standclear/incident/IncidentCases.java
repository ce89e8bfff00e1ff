package org.standclear.incident;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.BeforeEach;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.transaction.PlatformTransactionManager;
import org.standclear.cell.CellStates;
import org.standclear.cell.Cells;
import org.standclear.incident.IncidentReports.Report;
import org.standclear.incident.IncidentReports.Reported;
import org.standclear.incident.IncidentReports.Teller;
import org.standclear.people.Person;
import org.standclear.platform.ids.IncidentId;
import org.standclear.platform.lab.Labs;
import org.standclear.platform.security.Role;
import org.standclear.platform.time.LabTime;
import org.standclear.run.Run;
import org.standclear.run.RunLog;
import org.standclear.run.Runs;
import org.standclear.signoff.BenchCases;
import org.standclear.signoff.Release;
import org.standclear.trail.RecordedEntry;
import org.standclear.trail.TrailReader;

/** What tests of incidents share: a cell with a run on it, people who had no part in it, and the doors. */
public abstract class IncidentCases extends BenchCases {

    protected static final Incident.Form FORM = new Incident.Form(
            "The bit met the plate on the way down.",
            "Everybody stepped back.",
            Severity.DAMAGE,
            Severity.TREATMENT,
            Set.of());

    @Autowired
    protected Incidents incidents;

    @Autowired
    protected IncidentReports reports;

    @Autowired
    protected IncidentReviews reviews;

    @Autowired
    protected CorrectiveActions actions;

    @Autowired
    protected FrozenEvidence evidence;

    @Autowired
    protected RunLog log;

    @Autowired
    protected Runs runs;

    @Autowired
    protected Cells cells;

    @Autowired
    protected CellStates states;

    @Autowired
    protected LabTime labTime;

    @Autowired
    protected PlatformTransactionManager transactions;

    @Autowired
    private TrailReader trailReader;

    @Autowired
    private Labs theLabs;

    protected Person ines;
    protected Person rosalind;

    @BeforeEach
    void peopleWhoHadNoPart() {
        ines = scene().lab.person("Ines Quarryvale", Role.INSTRUCTOR);
        rosalind = scene().lab.person("Rosalind Oyelaran-Pike", Role.REVIEWER);
    }

    protected Run running() {
        Release release = scene().released();
        log.start(scene().booking, release.code(), scene().noor.id());
        return runs.of(scene().booking).orElseThrow();
    }

    protected Reported send(IncidentClass kind, Teller teller) {
        return reports.report(Report.brief(scene().cell, kind, "The hand was in the cell while it waited.", teller));
    }

    protected Reported.Kept kept(Reported reported) {
        return is(Reported.Kept.class, reported);
    }

    /** Reported by somebody who saw it. */
    protected IncidentId reported(IncidentClass kind) {
        return kept(send(kind, new Teller.Named(scene().hemi.id(), ReporterPart.SAW_IT)))
                .incident();
    }

    protected Incident now(IncidentId id) {
        return incidents.find(id).orElseThrow();
    }

    protected void done(IncidentOutcome outcome) {
        is(IncidentOutcome.Done.class, outcome);
    }

    protected String refused(IncidentOutcome outcome) {
        return is(IncidentOutcome.Refused.class, outcome).says();
    }

    protected LocalDate today() {
        return labTime.date(clock.instant());
    }

    /** Everything that the review of a held cell asks for but the actions' end, the restart and the closing. */
    protected void reviewed(IncidentId id, ControlLevel level) {
        done(reports.fill(id, now(id).kind(), FORM, scene().hemi.id()));
        done(reviews.take(id, ines.id()));
        for (CauseBranch branch : List.of(CauseBranch.PEOPLE, CauseBranch.PROGRAM, CauseBranch.CELL)) {
            done(reviews.addCause(
                    id, new IncidentReviews.NewCause(branch, null, "A cause among " + branch.words()), ines.id()));
        }
        done(reviews.agree(
                id,
                new IncidentReviews.NewAction(
                        "Put a cover on it", level, scene().hemi.id(), today().plusDays(7)),
                ines.id()));
    }

    /** The entries of the record about the incident, first to last. */
    protected List<RecordedEntry> recordOf(IncidentId id) {
        return trailReader.about(theLabs.theLab().id(), id.toString());
    }

    protected void assertRecorded(IncidentId id, String... kinds) {
        assertThat(recordOf(id)).extracting(RecordedEntry::kind).contains(kinds);
    }
}
