package org.standclear.incident.records;

import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.standclear.incident.Cause;
import org.standclear.incident.FilledForm;
import org.standclear.incident.Incident;
import org.standclear.incident.IncidentStep;
import org.standclear.incident.Incidents;
import org.standclear.incident.RiskReview;
import org.standclear.incident.Statement;
import org.standclear.platform.ids.IncidentId;
import org.standclear.platform.ids.RunId;
import org.standclear.platform.lab.Labs;

/** Reads incidents from the database. */
@Service
@Transactional(readOnly = true)
class JdbcIncidents implements Incidents {

    private final IncidentRows rows;
    private final StepRows steps;
    private final FormRows forms;
    private final ReviewRows reviews;
    private final Labs labs;

    JdbcIncidents(IncidentRows rows, StepRows steps, FormRows forms, ReviewRows reviews, Labs labs) {
        this.rows = rows;
        this.steps = steps;
        this.forms = forms;
        this.reviews = reviews;
        this.labs = labs;
    }

    @Override
    public Optional<Incident> find(IncidentId id) {
        return rows.find(id);
    }

    @Override
    public Optional<Incident> byReceipt(String receipt) {
        return rows.byReceipt(Receipts.stored(receipt));
    }

    @Override
    public List<Incident> ofRun(RunId run) {
        return rows.ofRun(run);
    }

    @Override
    public Page page(Filter filter, @Nullable Position after, int size) {
        List<Incident> found = rows.page(labs.theLab().id(), filter, after, size);
        if (found.size() <= size) {
            return new Page(found, null);
        }
        List<Incident> shown = found.subList(0, size);
        Incident last = shown.get(size - 1);
        return new Page(shown, new Position(last.reportedAt(), last.id()));
    }

    @Override
    public List<IncidentStep> steps(IncidentId id) {
        return steps.of(id);
    }

    @Override
    public List<FilledForm> forms(IncidentId id) {
        return forms.forms(id);
    }

    @Override
    public List<Statement> statements(IncidentId id) {
        return forms.statements(id);
    }

    @Override
    public List<Cause> causes(IncidentId id) {
        return reviews.causes(id);
    }

    @Override
    public List<RiskReview> riskReviews(IncidentId id) {
        return reviews.riskReviews(id);
    }

    @Override
    public Optional<Restart> restart(IncidentId id) {
        return reviews.restart(id);
    }
}
