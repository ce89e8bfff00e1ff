package org.standclear.cell;

import java.time.Clock;
import java.time.Instant;
import java.util.List;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.Id;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.live.LiveEvents;
import org.standclear.platform.time.LabTime;
import org.standclear.platform.time.SqlTime;
import org.standclear.trail.Trail;
import org.standclear.trail.TrailEntry;

/** Records inspections and reviews under the cell's row lock, so that no release slips past a change of what is due. */
@Service
class JdbcRecurringDuties implements RecurringDuties {

    private final RecurringRows rows;
    private final Cells cells;
    private final LiveEvents live;
    private final Trail trail;
    private final LabTime labTime;
    private final Clock clock;

    JdbcRecurringDuties(RecurringRows rows, Cells cells, LiveEvents live, Trail trail, LabTime labTime, Clock clock) {
        this.rows = rows;
        this.cells = cells;
        this.live = live;
        this.trail = trail;
        this.labTime = labTime;
        this.clock = clock;
    }

    @Override
    public List<DutyDue> due(CellId cell) {
        return rows.due(cell);
    }

    @Override
    public List<Done> done(CellId cell) {
        return rows.done(cell);
    }

    @Override
    public List<Interval> intervals(CellId cell) {
        return rows.intervals(cell);
    }

    @Override
    @Transactional
    public Kept record(RecordDuty order) {
        Cell cell = cells.lock(order.cell());
        Instant now = now();
        if (order.on().isAfter(labTime.date(now))) {
            return new Kept.Refused("on", "That day is still to come. Write the day on which it was done.");
        }
        Done done = new Done(
                Id.newValue(),
                cell.id(),
                order.duty(),
                order.on(),
                order.doneBy(),
                order.found(),
                cell.currentVersion(),
                order.by(),
                now);
        rows.add(done);
        live.cellChanged(cell.id());
        String words = cell.name() + ": " + order.duty().words() + " of " + labTime.day(order.on()) + " by "
                + order.doneBy() + ". " + order.found();
        trail.append(TrailEntry.of(cell.lab(), "cell." + order.duty().code() + "-done", cell.id(), order.by(), words)
                .with("done-on", order.on())
                .with("version", cell.currentVersion()));
        return new Kept.Recorded(done);
    }

    @Override
    @Transactional
    public void setInterval(CellId id, RecurringDuty duty, int days, String reason, PersonId by) {
        Cell cell = cells.lock(id);
        rows.add(id, new Interval(duty, days, by, now(), reason, null));
        live.cellChanged(id);
        trail.append(TrailEntry.of(
                        cell.lab(),
                        "cell." + duty.code() + "-interval",
                        id,
                        by,
                        cell.name() + ": " + duty.words() + " every " + days + " days. " + reason)
                .with("days", days)
                .with("reason", reason));
    }

    private Instant now() {
        return SqlTime.stored(clock.instant());
    }
}
