package org.standclear.run;

import java.time.Instant;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.standclear.platform.ids.BookingId;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.ids.RevisionId;
import org.standclear.platform.ids.RunId;
import org.standclear.signoff.Part;

/**
 * One run: from its first start to its close-out, with every release in between.
 *
 * @param cellVersion of the latest start
 * @param revision of the latest start
 * @param endedAt null until it is finished
 * @param passes as counted
 * @param stops e-stop presses and protective stops
 */
public record Run(
        RunId id,
        BookingId booking,
        CellId cell,
        int cellVersion,
        RevisionId revision,
        RunState state,
        Instant startedAt,
        @Nullable Instant endedAt,
        @Nullable Instant closedOutAt,
        int passes,
        int stops,
        List<Involved> people,
        int version) {

    public Run {
        people = List.copyOf(people);
    }

    /** The same with everybody who had a part in it. */
    public Run with(List<Involved> everybody) {
        return new Run(
                id,
                booking,
                cell,
                cellVersion,
                revision,
                state,
                startedAt,
                endedAt,
                closedOutAt,
                passes,
                stops,
                everybody,
                version);
    }

    /** Whether the person had a part in it. */
    public boolean involves(PersonId person) {
        return people.stream().anyMatch(one -> one.person().equals(person));
    }

    /** Everybody who had that part, first to last. */
    public List<PersonId> inPart(Part part) {
        return people.stream()
                .filter(one -> one.part() == part)
                .map(Involved::person)
                .toList();
    }

    /** Started again after a stop, under a new release. */
    public Run startedAgain(int newCellVersion, RevisionId newRevision) {
        require(state == RunState.STOPPED, "start again");
        return copy(newCellVersion, newRevision, RunState.RUNNING, null, null, passes, stops);
    }

    /** Stopped; a press on top of a stop counts too. */
    public Run stopped() {
        RunState now = state == RunState.RUNNING ? RunState.STOPPED : state;
        return copy(cellVersion, revision, now, endedAt, closedOutAt, passes, stops + 1);
    }

    /** One pass more. */
    public Run passed() {
        require(state == RunState.RUNNING, "count a pass");
        return copy(cellVersion, revision, state, null, null, passes + 1, stops);
    }

    /** No more motion. */
    public Run finished(int allPasses, Instant at) {
        require(state == RunState.RUNNING || state == RunState.STOPPED, "finish");
        return copy(cellVersion, revision, RunState.FINISHED, at, null, allPasses, stops);
    }

    /** Handed back. */
    public Run closedOut(Instant at) {
        require(state == RunState.FINISHED, "be closed out");
        return copy(cellVersion, revision, RunState.CLOSED_OUT, endedAt, at, passes, stops);
    }

    private void require(boolean fits, String act) {
        if (!fits) {
            throw new IllegalStateException("a run that is " + state.words() + " cannot " + act);
        }
    }

    private Run copy(
            int newCellVersion,
            RevisionId newRevision,
            RunState newState,
            @Nullable Instant ended,
            @Nullable Instant closed,
            int newPasses,
            int newStops) {
        return new Run(
                id,
                booking,
                cell,
                newCellVersion,
                newRevision,
                newState,
                startedAt,
                ended,
                closed,
                newPasses,
                newStops,
                people,
                version);
    }

    /** A person and their part. */
    public record Involved(PersonId person, Part part) {}
}
