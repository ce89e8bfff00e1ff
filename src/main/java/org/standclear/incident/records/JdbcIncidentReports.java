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
import org.standclear.incident.IncidentNumbers;
import org.standclear.incident.IncidentOutcome;
import org.standclear.incident.IncidentReports;
import org.standclear.incident.IncidentState;
import org.standclear.incident.IncidentStep;
import org.standclear.incident.ReporterPart;
import org.standclear.incident.Statement;
import org.standclear.platform.digest.Sha256;
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
    private final FormRows forms;
    private final RunAtThatTime runAtThatTime;
    private final Cells cells;
    private final Consequences consequences;
    private final Receipts receipts;
    private final Steps steps;
    private final IncidentNumbers numbers;
    private final Labs labs;

    JdbcIncidentReports(
            IncidentRows rows,
            InvolvedRows involved,
            FormRows forms,
            RunAtThatTime runAtThatTime,
            Cells cells,
            Consequences consequences,
            Receipts receipts,
            Steps steps,
            IncidentNumbers numbers,
            Labs labs) {
        this.rows = rows;
        this.involved = involved;
        this.forms = forms;
        this.runAtThatTime = runAtThatTime;
        this.cells = cells;
        this.consequences = consequences;
        this.receipts = receipts;
        this.steps = steps;
        this.numbers = numbers;
        this.labs = labs;
    }

    @Override
    public Reported report(Report report) {
        Instant now = steps.now();
        Optional<Reported.Refused> refusal = refusal(report, now);
        if (refusal.isPresent()) {
            return refusal.get();
        }
        PersonId account = account(report.teller());
        boolean holds = report.kind().holdsCell() && account != null;
        if (holds) {
            consequences.lock(report.cell());
        }
        Lab lab = labs.theLab();
        Instant happened = happened(report, now);
        Run run = runAtThatTime.of(report.cell(), report.run(), happened).orElse(null);
        Incident incident = incident(report, rows.nextNumber(lab.id()), run, happened, now);
        String receipt = incident.anonymous() ? receipt(report.teller()) : null;
        rows.add(lab.id(), incident, receipt == null ? null : Receipts.stored(receipt));
        involve(incident, run, now);
        forms.keep(incident, account, now);
        steps.take(
                incident,
                new Steps.Taken(
                        IncidentStep.Kind.REPORTED,
                        incident.kind().label() + ": " + incident.sentence(),
                        "Your report is number " + incident.number() + ". Staff read it next.",
                        account));
        if (holds && account != null) {
            consequences.hold(incident, account);
        }
        if (incident.kind().freezesEvidence()) {
            consequences.freeze(incident, incident.kind());
        }
        Incident.Form told = report.form();
        if (told != null && incident.form() == null && account != null) {
            keep(incident, OwnWords.of(told), account);
        }
        return new Reported.Kept(incident.id(), incident.number(), receipt);
    }

    @Override
    public String newReceipt() {
        return receipts.next();
    }

    private String receipt(Teller teller) {
        String carried = teller instanceof Teller.Anonymous nameless
                ? nameless.receipt()
                : teller instanceof Teller.AtScreen atScreen ? atScreen.receipt() : null;
        return receipts.usable(carried, stored -> rows.byReceipt(stored).isPresent());
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
        // who had a part in it tells it in their own words; how bad it was is said by somebody who had none
        boolean own = named != null && (named.part().isInvolved() || (run != null && run.involves(named.person())));
        Incident.Form form = own ? null : report.form();
        boolean filled = form != null || kind.isShortFormEnough();
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
                form,
                times().of(kind, happened),
                filled ? now : null,
                over ? IncidentState.CLOSED : IncidentState.OPEN,
                null,
                over ? now : null,
                List.of(),
                1);
    }

    private DueTimes times() {
        return new DueTimes(labs.theLab().zone(), numbers.inForce());
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
        return fill(id, new Filling(kind, form, null), by);
    }

    @Override
    public IncidentOutcome fill(IncidentId id, Filling filling, PersonId by) {
        Incident before = rows.lock(id).orElseThrow();
        Optional<IncidentOutcome> no = whyNotFilled(before, filling, by);
        if (no.isPresent()) {
            return no.get();
        }
        Incident.Form form = filling.form();
        Instant now = steps.now();
        Incident after = Changes.filled(before, filling.kind(), form, now, times());
        rows.change(after);
        forms.keep(after, by, now);
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

    private Optional<IncidentOutcome> whyNotFilled(Incident before, Filling filling, PersonId by) {
        if (before.state() == IncidentState.CLOSED) {
            return refused("", "The incident is closed; its form stays as it is.");
        }
        if (before.involves(by)) {
            return refused(
                    "",
                    "You had a part in it, or reported it without saying that you had none: add a statement in your own"
                            + " words. Somebody who had no part in it fills in the form.");
        }
        if (before.form() != null && before.state() != IncidentState.OPEN) {
            return refused("", "The form is filled in and the review has begun; what is wrong in it is said there.");
        }
        if (filling.seen() != null && filling.seen() != forms.count(before.id())) {
            return Optional.of(new IncidentOutcome.Stale(before));
        }
        return filling.kind().compareTo(before.kind()) < 0
                ? refused("kind", "The form does not lower the class; the review does, with a reason.")
                : Optional.empty();
    }

    private static Optional<IncidentOutcome> refused(String field, String says) {
        return Optional.of(new IncidentOutcome.Refused(field, says));
    }

    @Override
    public IncidentOutcome state(IncidentId id, String words, PersonId by) {
        Incident incident = rows.lock(id).orElseThrow();
        if (incident.state() == IncidentState.CLOSED) {
            return new IncidentOutcome.Refused("statement", "The incident is closed. Tell the instructor in person.");
        }
        keep(incident, words, by);
        return new IncidentOutcome.Done(id);
    }

    private void keep(Incident incident, String words, PersonId by) {
        forms.add(incident.id(), new Statement(by, steps.now(), words));
        steps.take(
                incident,
                new Steps.Taken(
                        IncidentStep.Kind.STATED,
                        "A statement in their own words; its SHA-256 is " + Sha256.of(words) + ".",
                        "A statement was added.",
                        by));
    }
}
