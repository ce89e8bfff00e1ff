package org.standclear.retention.records;

import java.time.Clock;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.standclear.people.People;
import org.standclear.platform.ids.Id;
import org.standclear.platform.ids.LabId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.lab.Labs;
import org.standclear.platform.retention.Concern.About;
import org.standclear.platform.time.SqlTime;
import org.standclear.retention.LegalHold;
import org.standclear.retention.LegalHold.Lifted;
import org.standclear.retention.LegalHold.Target;
import org.standclear.retention.LegalHolds;
import org.standclear.trail.Trail;
import org.standclear.trail.TrailEntry;

/** Holds in the database, each placed and lifted with an entry in the record. */
@Service
@Transactional
class JdbcLegalHolds implements LegalHolds {

    private final HoldRows rows;
    private final ItemRows items;
    private final People people;
    private final Labs labs;
    private final Trail trail;
    private final Clock clock;

    JdbcLegalHolds(HoldRows rows, ItemRows items, People people, Labs labs, Trail trail, Clock clock) {
        this.rows = rows;
        this.items = items;
        this.people = people;
        this.labs = labs;
        this.trail = trail;
        this.clock = clock;
    }

    @Override
    @Transactional(readOnly = true)
    public List<LegalHold> standing(int atMost) {
        return rows.standing(lab(), atMost);
    }

    @Override
    @Transactional(readOnly = true)
    public List<LegalHold> lifted(@Nullable LegalHold after, int atMost) {
        return rows.lifted(lab(), after, atMost);
    }

    @Override
    @Transactional(readOnly = true)
    public Optional<LegalHold> find(UUID id) {
        return rows.find(lab(), id);
    }

    @Override
    @Transactional(readOnly = true)
    public List<LegalHold> standingOn(About about, UUID id) {
        return rows.standingOn(lab(), about, id);
    }

    @Override
    public UUID place(Target target, String reason, String authority, PersonId by) {
        // what a list is disposing of at this moment is finished first; after that the hold counts for everything
        items.waitForOpenLists(lab());
        LegalHold hold = new LegalHold(Id.newValue(), target, reason, authority, by, now(), null);
        rows.insert(lab(), hold);
        tell("retention.hold-placed", hold, by, people.printedName(by) + " placed a legal hold.");
        return hold.id();
    }

    @Override
    @Transactional(readOnly = true)
    public Optional<String> whyNotLift(LegalHold hold, PersonId by) {
        if (hold.placedBy().equals(by)) {
            return Optional.of("You placed this legal hold. A second person lifts it.");
        }
        return rows.isAbout(hold.id(), by.value())
                ? Optional.of("This legal hold is about you, or about something in which you had a part. "
                        + "Somebody without a part in it lifts it.")
                : Optional.empty();
    }

    @Override
    public Optional<String> lift(UUID id, String reason, PersonId by) {
        LegalHold hold = rows.find(lab(), id).orElseThrow();
        Optional<String> whyNot = whyNotLift(hold, by);
        if (whyNot.isPresent()) {
            return whyNot;
        }
        if (!rows.lift(id, new Lifted(by, now(), reason))) {
            return Optional.of("It was lifted already.");
        }
        tell("retention.hold-lifted", hold, by, people.printedName(by) + " lifted a legal hold.");
        return Optional.empty();
    }

    /** The reason stays in the table of holds: it may name people, and the record is never disposed of. */
    private void tell(String kind, LegalHold hold, PersonId by, String words) {
        TrailEntry entry = TrailEntry.of(lab(), kind, hold.id(), by, words);
        trail.append(
                hold.target() instanceof Target.One one
                        ? entry.with("about", one.about()).with("subject", one.id())
                        : entry.with("kind", ((Target.Span) hold.target()).kind()));
    }

    private LabId lab() {
        return labs.theLab().id();
    }

    private Instant now() {
        return SqlTime.stored(clock.instant());
    }
}
