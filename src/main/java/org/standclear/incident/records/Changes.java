package org.standclear.incident.records;

import java.time.Instant;
import org.jspecify.annotations.Nullable;
import org.standclear.incident.Incident;
import org.standclear.incident.IncidentClass;
import org.standclear.incident.IncidentState;
import org.standclear.platform.ids.PersonId;

/** An incident with something changed; what happened, when and who told it never change. */
final class Changes {

    private Changes() {}

    /** With the full form, which is filled in late only as far as it was late the first time. */
    static Incident filled(Incident before, IncidentClass kind, Incident.Form form, Instant now, DueTimes times) {
        Instant due = due(before, kind, now, times);
        Instant done = before.formDoneAt();
        return copy(before, kind, form, due, done == null ? now : done, before.state(), before.reviewer(), null);
    }

    /** With another class; the form of a higher class is due from now, since nobody knew before. */
    static Incident classed(
            Incident before, IncidentClass kind, Incident.@Nullable Form form, Instant now, DueTimes times) {
        boolean formStillMissing = (form == null || !form.isFilledIn()) && !kind.isShortFormEnough();
        Instant done = formStillMissing ? null : before.formDoneAt() == null ? now : before.formDoneAt();
        return copy(
                before,
                kind,
                form,
                due(before, kind, now, times),
                done,
                before.state(),
                before.reviewer(),
                before.closedAt());
    }

    private static @Nullable Instant due(Incident before, IncidentClass kind, Instant now, DueTimes times) {
        return kind == before.kind() ? before.formDueAt() : times.of(kind, now);
    }

    static Incident reviewedBy(Incident before, PersonId reviewer) {
        return copy(
                before,
                before.kind(),
                before.form(),
                before.formDueAt(),
                before.formDoneAt(),
                IncidentState.IN_REVIEW,
                reviewer,
                null);
    }

    static Incident closed(Incident before, Instant now) {
        return copy(
                before,
                before.kind(),
                before.form(),
                before.formDueAt(),
                before.formDoneAt(),
                IncidentState.CLOSED,
                before.reviewer(),
                now);
    }

    static Incident openedAgain(Incident before) {
        return copy(
                before,
                before.kind(),
                before.form(),
                before.formDueAt(),
                before.formDoneAt(),
                IncidentState.IN_REVIEW,
                before.reviewer(),
                null);
    }

    private static Incident copy(
            Incident from,
            IncidentClass kind,
            Incident.@Nullable Form form,
            @Nullable Instant due,
            @Nullable Instant done,
            IncidentState state,
            @Nullable PersonId reviewer,
            @Nullable Instant closedAt) {
        return new Incident(
                from.id(),
                from.number(),
                from.cell(),
                from.run(),
                from.booking(),
                kind,
                from.sentence(),
                from.happenedAt(),
                from.reportedAt(),
                from.reporter(),
                from.reporterPart(),
                from.anonymous(),
                form,
                due,
                done,
                state,
                reviewer,
                closedAt,
                from.involved(),
                from.version());
    }
}
