package org.standclear.cell;

import java.time.Clock;
import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.Id;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.live.LiveEvents;
import org.standclear.platform.time.SqlTime;
import org.standclear.trail.Trail;
import org.standclear.trail.TrailEntry;

/** Hangs and lifts tags under the cell's row lock; the cell's state is what the hanging tags make of it. */
@Service
class JdbcCellStates implements CellStates {

    private final JdbcClient jdbc;
    private final Cells cells;
    private final CellTagRows tags;
    private final DayTestRows dayTests;
    private final ToolReadings readings;
    private final RunPeople runPeople;
    private final CellFiles files;
    private final List<ReturnCondition> conditions;
    private final LiveEvents live;
    private final Trail trail;
    private final Clock clock;

    JdbcCellStates(
            JdbcClient jdbc,
            Cells cells,
            CellTagRows tags,
            DayTestRows dayTests,
            ToolReadings readings,
            RunPeople runPeople,
            CellFiles files,
            List<ReturnCondition> conditions,
            LiveEvents live,
            Trail trail,
            Clock clock) {
        this.jdbc = jdbc;
        this.cells = cells;
        this.tags = tags;
        this.dayTests = dayTests;
        this.readings = readings;
        this.runPeople = runPeople;
        this.files = files;
        this.conditions = List.copyOf(conditions);
        this.live = live;
        this.trail = trail;
        this.clock = clock;
    }

    @Override
    @Transactional
    public void tagOut(CellId cell, PersonId by, String reason) {
        stop(new StopCell(cell, CellTag.Kind.OUT_OF_SERVICE, by, reason, null));
    }

    @Override
    @Transactional
    public void hold(CellId cell, PersonId by, String reason) {
        stop(new StopCell(cell, CellTag.Kind.HOLD, by, reason, null));
    }

    @Override
    @Transactional
    public void stop(StopCell order) {
        Cell cell = cells.lock(order.cell());
        hang(order, now());
        settle(cell);
        String what = switch (order.kind()) {
            case HOLD -> "held";
            case TEST -> "put under test";
            default -> "tagged out";
        };
        TrailEntry entry = TrailEntry.of(
                        cell.lab(),
                        "cell." + what.replace(' ', '-'),
                        cell.id(),
                        order.by(),
                        cell.name() + " was " + what + ": " + order.reason())
                .with("reason", order.reason());
        trail.append(order.causedBy() == null ? entry : entry.with("caused-by", order.causedBy()));
    }

    private void hang(StopCell order, Instant at) {
        tags.add(new CellTag(
                Id.newValue(), order.cell(), order.kind(), order.reason(), order.by(), at, order.causedBy(), null));
    }

    @Override
    @Transactional
    public Return returnToService(CellId id, PersonId by, String reason) {
        Cell cell = cells.lock(id);
        List<CellTag> stopping = tags.hanging(id).stream()
                .filter(tag -> tag.kind().comesOffAtReturn())
                .toList();
        Optional<String> locked = tags.hanging(id).stream()
                .filter(tag -> tag.kind() == CellTag.Kind.LOCKOUT)
                .map(tag -> cell.name() + " is locked out: " + tag.reason()
                        + ". Who put the lock on takes it off first; a return to service takes off tags only.")
                .findFirst();
        if (locked.isPresent()) {
            return new Return.Refused(locked.get());
        }
        Optional<String> refusal = CellGates.refusal(returnQuestion(cell, stopping, by))
                .or(() -> conditions.stream()
                        .flatMap(condition -> condition.refusal(id, by).stream())
                        .findFirst());
        if (refusal.isPresent()) {
            return new Return.Refused(refusal.get());
        }
        stopping.forEach(tag -> tags.lift(tag, new CellTag.Lifted(by, now(), reason)));
        CellState state = settle(cell);
        trail.append(TrailEntry.of(
                        cell.lab(), "cell.returned", id, by, cell.name() + " was put back into service: " + reason)
                .with("reason", reason)
                .with("tags", stopping.size()));
        return new Return.Returned(state);
    }

    private CellGates.ReturnQuestion returnQuestion(Cell cell, List<CellTag> stopping, PersonId by) {
        Set<PersonId> involved = stopping.stream()
                .flatMap(tag -> runPeople.at(cell.id(), tag.placedAt()).stream())
                .collect(Collectors.toSet());
        return new CellGates.ReturnQuestion(
                cell,
                stopping,
                dayTests.latestAfter(cell.id(), tags.before(cell.id()).test()),
                readings.sinceTagged(cell.id()),
                files.factsOf(cells.current(cell.id())),
                involved,
                by);
    }

    @Override
    @Transactional
    public void lockOut(CellId id, PersonId by, String what) {
        Cell cell = cells.lock(id);
        tags.add(new CellTag(Id.newValue(), id, CellTag.Kind.LOCKOUT, what, by, now(), null, null));
        settle(cell);
        trail.append(TrailEntry.of(cell.lab(), "cell.locked-out", id, by, cell.name() + " was locked out: " + what)
                .with("reason", what));
    }

    @Override
    @Transactional
    public Return removeLockout(CellId id, UUID lockout, PersonId by, boolean instructor, String reason) {
        Cell cell = cells.lock(id);
        Optional<CellTag> found = tags.hanging(id).stream()
                .filter(tag -> tag.id().equals(lockout) && tag.kind() == CellTag.Kind.LOCKOUT)
                .findFirst();
        if (found.isEmpty()) {
            return new Return.Refused("That lockout does not hang any more.");
        }
        boolean own = found.get().placedBy().equals(by);
        if (!own && !instructor) {
            return new Return.Refused(
                    "A lockout is taken off by who put it on. If they cannot, an instructor does, and says why.");
        }
        tags.lift(found.get(), new CellTag.Lifted(by, now(), reason));
        if (tags.hanging(id).stream().noneMatch(tag -> tag.kind().stops())) {
            // somebody worked inside: the day test of before says nothing about the cell of now
            String why = "was locked out; back by the list of a return to service";
            tags.add(new CellTag(Id.newValue(), id, CellTag.Kind.HOLD, why, by, now(), null, null));
        }
        CellState state = settle(cell);
        trail.append(TrailEntry.of(
                        cell.lab(),
                        "cell.lockout-removed",
                        id,
                        by,
                        "A lockout of " + cell.name() + " was taken off" + (own ? "" : ", not by its owner") + ": "
                                + reason)
                .with("owner", found.get().placedBy())
                .with("reason", reason));
        return new Return.Returned(state);
    }

    @Override
    @Transactional
    public void restrict(CellId id, PersonId by, String reason) {
        Cell cell = cells.lock(id);
        tags.add(new CellTag(Id.newValue(), id, CellTag.Kind.RESTRICTION, reason, by, now(), null, null));
        settle(cell);
        String words = cell.name() + " was restricted, only staff attend: " + reason;
        trail.append(TrailEntry.of(cell.lab(), "cell.restricted", id, by, words).with("reason", reason));
    }

    @Override
    @Transactional
    public void unrestrict(CellId id, PersonId by, String reason) {
        Cell cell = cells.lock(id);
        tags.hanging(id).stream()
                .filter(tag -> tag.kind() == CellTag.Kind.RESTRICTION)
                .forEach(tag -> tags.lift(tag, new CellTag.Lifted(by, now(), reason)));
        settle(cell);
        String words = "The restriction of " + cell.name() + " was taken off: " + reason;
        trail.append(
                TrailEntry.of(cell.lab(), "cell.unrestricted", id, by, words).with("reason", reason));
    }

    @Override
    public List<CellTag> tags(CellId cell) {
        return tags.all(cell);
    }

    /** Writes the state that the hanging tags make. */
    private CellState settle(Cell cell) {
        live.cellChanged(cell.id());
        List<CellTag> hanging = tags.hanging(cell.id());
        CellState state = hanging.stream()
                .map(CellTag::kind)
                .max(Comparator.naturalOrder())
                .map(CellTag.Kind::state)
                .orElse(CellState.IN_SERVICE);
        String reasons = hanging.stream()
                .filter(tag -> tag.kind().state() == state)
                .map(CellTag::reason)
                .distinct()
                .collect(Collectors.joining(" · "));
        jdbc.sql("update cells set state = :state, state_reason = :reason where id = :id")
                .param("state", state.name())
                .param("reason", reasons.length() > 4000 ? reasons.substring(0, 3999) + "…" : reasons)
                .param("id", cell.id().value())
                .update();
        return state;
    }

    private Instant now() {
        return SqlTime.stored(clock.instant());
    }
}
