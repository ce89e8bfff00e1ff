package org.standclear.incident.records;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.standclear.cell.Cells;
import org.standclear.incident.Incident;
import org.standclear.incident.IncidentClass;
import org.standclear.incident.IncidentOutcome;
import org.standclear.incident.IncidentReports;
import org.standclear.incident.IncidentState;
import org.standclear.incident.IncidentStep;
import org.standclear.incident.ReporterPart;
import org.standclear.platform.ids.IncidentId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.lab.Lab;
import org.standclear.platform.lab.Labs;
import org.standclear.platform.time.SqlTime;
import org.standclear.run.Run;

/** Takes reports in, with everything that their class asks for, in one transaction. */
@Service
@Transactional
class JdbcIncidentReports implements IncidentReports {

    /** A clock at the reporter's wrist may be a little ahead of ours. */
    private static final Duration AHEAD = Duration.ofMinutes(2);

    private final IncidentRows rows;
    private final InvolvedRows involved;
    private final RunAtThatTime runAtThatTime;
    private final Cells cells;
    private final Consequences consequences;
    private final Receipts receipts;
    private final Steps steps;
    private final Labs labs;

    JdbcIncidentReports(
            IncidentRows rows,
            InvolvedRows involved,
            RunAtThatTime runAtThatTime,
            Cells cells,
            Consequences consequences,
            Receipts receipts,
            Steps steps,
            Labs labs) {
        this.rows = rows;
        this.involved = involved;
        this.runAtThatTime = runAtThatTime;
        this.cells = cells;
        this.consequences = consequences;
        this.receipts = receipts;
        this.steps = steps;
        this.labs = labs;
    }

    @Override
    public Reported report(Report report) {
        Instant now = steps.now();
        Optional<Reported.Refused> refusal = refusal(report, now);
        if (refusal.isPresent()) {
            return refusal.get();
        }
        Lab lab = labs.theLab();
        Instant happened = happened(report, now);
        Run run = runAtThatTime.of(report.cell(), report.run(), happened).orElse(null);
        Incident incident = incident(report, rows.nextNumber(lab.id()), run, happened, now);
        String receipt = incident.anonymous() ? receipts.next() : null;
        rows.add(lab.id(), incident, receipt == null ? null : Receipts.stored(receipt));
        involve(incident, run, now);
        steps.take(
                incident,
                new Steps.Taken(
                        IncidentStep.Kind.REPORTED,
                        incident.kind().label() + ": " + incident.sentence(),
                        "Your report is number " + incident.number() + ". Staff read it next.",
                        account(report.teller())));
        PersonId account = account(report.teller());
        if (incident.kind().holdsCell() && account != null) {
            consequences.hold(incident, account);
        }
        if (incident.kind().freezesEvidence()) {
            consequences.freeze(incident, incident.kind());
        }
        return new Reported.Kept(incident.id(), incident.number(), receipt);
    }

    private Optional<Reported.Refused> refusal(Report report, Instant now) {
        if (cells.find(report.cell()).isEmpty()) {
            return Optional.of(new Reported.Refused("cell", "Choose a cell from the list."));
        }
        if (report.happenedAt() != null && report.happenedAt().isAfter(now.plus(AHEAD))) {
            return Optional.of(new Reported.Refused("happened", "That has not happened yet. Write when it did."));
        }
        boolean noName = report.teller() instanceof Teller.Anonymous;
        if (noName && report.kind().holdsCell()) {
            return Optional.of(new Reported.Refused(
                    "signed",
                    "This class holds the cell, and a hold carries a name. Send it with your name, or tell staff now;"
                            + " a near miss can be sent without one."));
        }
        return noName && report.form() != null
                ? Optional.of(new Reported.Refused("signed", "The full form is sent with a name."))
                : Optional.empty();
    }

    private static Instant happened(Report report, Instant now) {
        Instant told = report.happenedAt();
        return told == null || told.isAfter(now) ? now : SqlTime.stored(told);
    }

    private Incident incident(Report report, int number, @Nullable Run run, Instant happened, Instant now) {
        IncidentClass kind = report.kind();
        Teller.Named named = report.teller() instanceof Teller.Named one ? one : null;
        boolean filled = report.form() != null || kind.isShortFormEnough();
        // one tap says it all: there is nothing to review
        boolean over = kind == IncidentClass.PRECAUTIONARY_STOP;
        return new Incident(
                IncidentId.next(),
                number,
                report.cell(),
                run == null ? null : run.id(),
                run == null ? null : run.booking(),
                kind,
                report.sentence(),
                happened,
                now,
                named == null ? null : named.person(),
                named == null ? ReporterPart.UNKNOWN : named.part(),
                named == null,
                report.form(),
                kind.formDue().after(happened, labs.theLab().zone()),
                filled ? now : null,
                over ? IncidentState.CLOSED : IncidentState.OPEN,
                null,
                over ? now : null,
                List.of(),
                1);
    }

    private void involve(Incident incident, @Nullable Run run, Instant now) {
        if (run != null) {
            run.people()
                    .forEach(one ->
                            involved.add(incident.id(), one.person(), one.part().words(), now));
        }
    }

    private static @Nullable PersonId account(Teller teller) {
        if (teller instanceof Teller.Named named) {
            return named.person();
        }
        return teller instanceof Teller.AtScreen atScreen ? atScreen.screen() : null;
    }

    @Override
    public IncidentOutcome fill(IncidentId id, IncidentClass kind, Incident.Form form, PersonId by) {
        Incident before = rows.lock(id).orElseThrow();
        if (before.state() == IncidentState.CLOSED) {
            return new IncidentOutcome.Refused("", "The incident is closed; its form stays as it is.");
        }
        if (before.form() != null && before.state() != IncidentState.OPEN) {
            return new IncidentOutcome.Refused(
                    "", "The form is filled in and the review has begun; what is wrong in it is said there.");
        }
        if (kind.compareTo(before.kind()) < 0) {
            return new IncidentOutcome.Refused(
                    "kind", "The form does not lower the class; the review does, with a reason.");
        }
        Instant now = steps.now();
        Incident after = Changes.filled(before, kind, form, now, labs.theLab().zone());
        rows.change(after);
        steps.take(
                after,
                new Steps.Taken(
                        IncidentStep.Kind.FORM_FILLED,
                        "The form is filled in: " + after.kind().label() + "; it was: "
                                + form.actual().words() + "; it could have been: "
                                + form.foreseeable().words() + ".",
                        "The full form is filled in.",
                        by));
        consequences.rise(before, after, by);
        return new IncidentOutcome.Done(id);
    }
}
