package org.standclear.incident.records;

import java.time.Clock;
import java.time.Instant;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.standclear.platform.retention.DisposableRows;
import org.standclear.platform.retention.DueRows;
import org.standclear.platform.retention.RecordKind;

/**
 * Words of one kind that a closed incident's review left: where they stand, and in the step that tells them once more. As
 * long as an action's effect is open the incident may be opened again, and they stay.
 */
abstract class OldReviewWords extends DisposableRows {

    private final JdbcClient jdbc;
    private final Clock clock;
    private final String step;

    /**
     * For one kind.
     *
     * @param standing a condition on the incident {@code i}: such words stand; never a word from outside
     * @param step the kind of step that tells them
     */
    OldReviewWords(
            JdbcClient jdbc, Clock clock, IncidentConcerns concerns, RecordKind kind, String standing, String step) {
        super(kind, new DueRows(jdbc, """
                select i.id as id, i.closed_at as clock_start, i.reporter as person, case when exists (select 1 from
                    incident_actions a where a.incident_id = i.id and a.checked_at is null)
                    then 'the effect of an action of it is not checked yet' else '' end as kept_back,
                    concat('incident ', i.number) as said
                from incidents i where i.closed_at is not null and\s""" + standing, concerns::of));
        this.jdbc = jdbc;
        this.clock = clock;
        this.step = step;
    }

    @Override
    public final boolean dispose(UUID id) {
        jdbc.sql("""
                update incident_steps set words = :gone,
                    for_reporter = case when kind = 'CLOSED' then '' else for_reporter end
                where incident_id = :id and kind = :step""").param("gone", GONE).param("id", id).param("step", step).update();
        return takeOut(jdbc, id, clock.instant()) > 0;
    }

    /** Takes them out where they stand; how many rows had them. */
    abstract int takeOut(JdbcClient jdbc, UUID incident, Instant at);
}
