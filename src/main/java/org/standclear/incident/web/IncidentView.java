package org.standclear.incident.web;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.standclear.incident.web.ActionViews.ActionView;
import org.standclear.incident.web.CauseTree.CauseView;

/**
 * Everything about one incident.
 *
 * @param questions what to ask when it may have to be reported; empty for other classes
 * @param evidence what was frozen; null when nothing was
 * @param mayReview whether the reader may review it
 * @param whyNotReview why not, for a reviewer who had a part in it; empty otherwise
 * @param medicalNotes how many there are in the restricted part, for those who may open it; -1 for anybody else
 */
record IncidentView(
        String id,
        String headline,
        String kicker,
        String sentence,
        String state,
        String stateWords,
        List<Fact> facts,
        List<Fact> harm,
        String story,
        String atOnce,
        ReporterViews.FormView form,
        boolean toldAtOnce,
        List<String> questions,
        String runHref,
        @Nullable EvidenceView evidence,
        List<PhotoView> photos,
        List<CauseView> causes,
        List<ActionView> actions,
        List<Fact> riskReviews,
        String restart,
        boolean waitsForRestart,
        boolean mayReview,
        String whyNotReview,
        int medicalNotes,
        List<StepView> steps) {

    /** A name and a value. */
    record Fact(String name, String value) {}

    /** Frozen evidence, recomputed for this page. */
    record EvidenceView(boolean holds, String line, String sha256, List<PieceView> pieces) {}

    /** One piece of evidence. */
    record PieceView(int number, String kind, String words, String sha256, boolean holds) {}

    /** A photo. */
    record PhotoView(String href, String words, int width, int height) {}

    /** A step. */
    record StepView(String at, String iso, String what, String words, String who) {}
}
