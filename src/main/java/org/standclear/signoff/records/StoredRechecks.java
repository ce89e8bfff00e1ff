package org.standclear.signoff.records;

import java.time.Clock;
import java.time.Instant;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.stereotype.Service;
import org.standclear.cell.Cell;
import org.standclear.cell.Cells;
import org.standclear.cell.VersionEffects;
import org.standclear.check.ProgramChecks;
import org.standclear.check.StoredAnswer.Verdict;
import org.standclear.core.check.RuleSet;
import org.standclear.people.People;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.time.LabTime;
import org.standclear.platform.time.SqlTime;
import org.standclear.program.Programs;
import org.standclear.signoff.Preparation;
import org.standclear.signoff.Rechecks;
import org.standclear.signoff.records.RecheckRows.Candidate;
import org.standclear.signoff.records.RecheckRows.Pending;
import org.standclear.signoff.records.RecheckRows.Rechecked;

/** Brings left-behind bookings up to date one by one, each in its own transaction, and says what became of them. */
@Service
class StoredRechecks implements Rechecks, VersionEffects {

    private static final Logger LOG = LoggerFactory.getLogger(StoredRechecks.class);

    private static final int TRIES = 5;

    private final RecheckRows rows;
    private final Preparation preparation;
    private final ProgramChecks checks;
    private final Cells cells;
    private final Programs programs;
    private final People people;
    private final LabTime labTime;
    private final Clock clock;

    /** How often something was tried in vain; what cannot be answered must not keep the others waiting. */
    private final Map<Pending, Integer> inVain = Collections.synchronizedMap(new Latest());

    StoredRechecks(
            RecheckRows rows,
            Preparation preparation,
            ProgramChecks checks,
            Cells cells,
            Programs programs,
            People people,
            LabTime labTime,
            Clock clock) {
        this.rows = rows;
        this.preparation = preparation;
        this.checks = checks;
        this.cells = cells;
        this.programs = programs;
        this.people = people;
        this.labTime = labTime;
        this.clock = clock;
    }

    /** Forgets the oldest rather than grow. */
    private static final class Latest extends LinkedHashMap<Pending, Integer> {

        private static final long serialVersionUID = 1L;

        @Override
        protected boolean removeEldestEntry(Map.Entry<Pending, Integer> eldest) {
            return size() > 1000;
        }
    }

    @Override
    public int runPending(int atMost) {
        List<Pending> next = left().stream()
                .filter(pending -> inVain.getOrDefault(pending, 0) < TRIES)
                .limit(atMost)
                .toList();
        return (int) next.stream().filter(this::brought).count();
    }

    private boolean brought(Pending pending) {
        try {
            preparation.look(pending.booking());
        } catch (RuntimeException fault) {
            LOG.warn("The re-check for booking {} failed", pending.booking(), fault);
        }
        boolean done = left().stream().noneMatch(pending::equals);
        if (!done) {
            inVain.merge(pending, 1, Integer::sum);
        }
        return done;
    }

    @Override
    public int pending() {
        return left().size();
    }

    /** What was left behind, and not only may have been. */
    private List<Pending> left() {
        return rows.candidates(now()).stream()
                .filter(one -> one.certain() || !checks.isInForce(one.answer(), one.course(), one.operator()))
                .map(Candidate::pending)
                .toList();
    }

    @Override
    public List<Effect> of(CellId id) {
        Cell cell = cells.find(id).orElseThrow();
        Map<Object, Effect> latest = new LinkedHashMap<>();
        rows.of(id, now()).forEach(one -> latest.putIfAbsent(one.booking(), effect(one, cell)));
        return List.copyOf(latest.values());
    }

    private Effect effect(Rechecked one, Cell cell) {
        Verdict after = one.after();
        String on = " on version " + one.versionBefore();
        if (!one.rulesBefore().equals(RuleSet.CURRENT)) {
            on = " by the rules before";
        } else if (one.versionBefore() == cell.currentVersion()) {
            on = " by the phrasebook before";
        }
        return new Effect(
                "/bookings/" + one.booking(),
                labTime.day(one.start()) + ", " + labTime.times(one.start(), one.end()),
                people.printedName(one.operator()),
                programs.find(one.revision())
                        .map(revision -> revision.title() + ", revision " + revision.number())
                        .orElse("unknown"),
                one.before().words() + on,
                after == null ? "the re-check waits" : after.words() + " on version " + cell.currentVersion(),
                after == null ? "waiting" : after.mark(),
                after != null && after != one.before(),
                one.answer() == null ? "" : "/checks/" + one.answer());
    }

    private Instant now() {
        return SqlTime.stored(clock.instant());
    }
}
