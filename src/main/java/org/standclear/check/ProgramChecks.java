package org.standclear.check;

import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.standclear.core.check.CheckAnswer;
import org.standclear.platform.ids.AnswerId;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.CourseId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.ids.RevisionId;

/** Runs the check and keeps its answers. An answer never changes; a new cell version asks for a new one. */
public interface ProgramChecks {

    /**
     * The answer for the revision on the cell's current version under the course's limits, from the store or computed
     * now and stored.
     *
     * @param course null for the strictest limits of all courses that the operator takes, and the usual ones (override
     *     50 %)
     * @param operator who is to run it
     */
    Outcome check(RevisionId revision, CellId cell, @Nullable CourseId course, PersonId operator);

    /** The answer of that id. */
    Optional<StoredAnswer> find(AnswerId id);

    /**
     * Whether the answer stands on the limits and the rules that are in force now for that course and operator; the
     * cell's version is another question.
     */
    boolean isInForce(AnswerId id, @Nullable CourseId course, PersonId operator);

    /** The answer of that id without its findings. */
    default Optional<AnswerBrief> brief(AnswerId id) {
        return find(id).map(AnswerBrief::of);
    }

    /** What the page of an answer shows. */
    default Optional<AnswerDetails> details(AnswerId id) {
        return Optional.empty();
    }

    /** The whole answer, computed again from the same file and cell version; none when there was no turn for it. */
    default Optional<CheckAnswer> again(AnswerId id) {
        return Optional.empty();
    }

    /** All answers for a revision, latest first. */
    List<StoredAnswer> answersFor(RevisionId revision);

    /** All answers for a revision without their findings, latest first. */
    default List<AnswerBrief> briefFor(RevisionId revision) {
        return answersFor(revision).stream().map(AnswerBrief::of).toList();
    }

    /** The same of each of these revisions, asked together; a revision without an answer has no entry. */
    Map<RevisionId, List<AnswerBrief>> briefsFor(Collection<RevisionId> revisions);

    /** An answer, or the one line that says why the file could not be read. */
    sealed interface Outcome {

        /** The check answered. */
        record Answered(StoredAnswer answer) implements Outcome {}

        /** The file is bad input; says what and at which line. Nothing was stored. */
        record Unreadable(String says) implements Outcome {}

        /** Too many large files are being checked just now; nothing was stored, and asking again later helps. */
        record Busy(String says) implements Outcome {}
    }
}
