package org.standclear.incident.rules;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.standclear.incident.Cause;
import org.standclear.incident.CauseBranch;
import org.standclear.incident.CorrectiveAction;
import org.standclear.incident.Incident;
import org.standclear.incident.IncidentClass;
import org.standclear.incident.IncidentState;
import org.standclear.incident.ReviewLevel;
import org.standclear.incident.Severity;

/** How deep a review goes, and what it lacks before it can be closed. */
public final class ReviewRules {

    /** Branches of the cause tree that a review looks into, of four. */
    static final int BRANCHES = 3;

    private ReviewRules() {}

    /** By what happened and by what could reasonably have happened, whichever is worse. Common practice, no source. */
    public static ReviewLevel level(IncidentClass kind, Incident.Form form) {
        Severity worst = form.actual().compareTo(form.foreseeable()) > 0 ? form.actual() : form.foreseeable();
        ReviewLevel byHarm = switch (worst) {
            case NONE, DAMAGE, FIRST_AID -> ReviewLevel.READ;
            case TREATMENT -> ReviewLevel.REVIEW;
            case LASTING, DEATH -> ReviewLevel.FULL_REVIEW;
        };
        return byHarm.compareTo(level(kind)) > 0 ? byHarm : level(kind);
    }

    /** By the class alone, while nobody has said how bad it could have been. */
    public static ReviewLevel level(IncidentClass kind) {
        return kind == IncidentClass.REPORTABLE
                ? ReviewLevel.FULL_REVIEW
                : kind.holdsCell() ? ReviewLevel.REVIEW : ReviewLevel.READ;
    }

    /**
     * The facts about a closing.
     *
     * @param closesAsReviewer whether the person is a safety reviewer
     * @param whyOnlyWeak why it closes on rules and equipment alone; empty when nobody has said so
     */
    public record ClosingQuestion(
            Incident incident,
            ReviewLevel level,
            List<Cause> causes,
            List<CorrectiveAction> actions,
            boolean restartApproved,
            boolean riskReviewed,
            boolean closesAsReviewer,
            String whyOnlyWeak) {}

    /** What is missing, in the order in which it is usually done; empty when nothing is. */
    public static List<String> missing(ClosingQuestion question) {
        List<String> missing = new ArrayList<>();
        Incident incident = question.incident();
        if (incident.state() == IncidentState.OPEN) {
            missing.add("Nobody has taken the review.");
        }
        if (incident.formIsDue()) {
            missing.add("The form is not filled in.");
        }
        if (question.level().asksForCauses()) {
            causes(question, missing);
        }
        if (question.actions().stream().anyMatch(action -> action.done() == null)) {
            missing.add("An action is not done yet.");
        }
        if (incident.kind().holdsCell()) {
            held(question, missing);
        }
        if (question.level() == ReviewLevel.FULL_REVIEW && !question.closesAsReviewer()) {
            missing.add("What could have happened is grave: the safety reviewer closes it.");
        }
        return List.copyOf(missing);
    }

    private static void causes(ClosingQuestion question, List<String> missing) {
        Set<CauseBranch> branches = EnumSet.noneOf(CauseBranch.class);
        question.causes().stream().filter(cause -> !cause.struck()).forEach(cause -> branches.add(cause.branch()));
        if (branches.size() < BRANCHES) {
            missing.add("The cause tree has causes in " + branches.size() + " of " + CauseBranch.values().length
                    + " branches; look into " + BRANCHES + " at least.");
        }
        if (question.actions().isEmpty()) {
            missing.add("No corrective action is agreed.");
        }
    }

    private static void held(ClosingQuestion question, List<String> missing) {
        boolean onlyWeak = !question.actions().isEmpty()
                && question.actions().stream().allMatch(action -> action.level().leavesTheHazard());
        if (onlyWeak && question.whyOnlyWeak().isBlank()) {
            missing.add("All actions are rules or protective equipment, which leave the hazard where it is: "
                    + "the instructor writes why nothing stronger can be done.");
        }
        if (!question.riskReviewed()) {
            missing.add("No review of the cell's risk assessment is noted.");
        }
        if (!question.restartApproved()) {
            missing.add("The restart is not approved.");
        }
    }
}
