package org.standclear.retention.records;

import java.time.Clock;
import java.time.Instant;
import java.time.YearMonth;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.standclear.people.People;
import org.standclear.platform.digest.Sha256;
import org.standclear.platform.ids.Id;
import org.standclear.platform.ids.LabId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.lab.Labs;
import org.standclear.platform.time.LabTime;
import org.standclear.platform.time.SqlTime;
import org.standclear.retention.DisposalWaits;
import org.standclear.retention.Disposals;
import org.standclear.retention.DueRecords;
import org.standclear.retention.records.ListRows.NewList;
import org.standclear.trail.Trail;
import org.standclear.trail.TrailEntry;

/** Lists in the database: one a month, approved as it was shown. */
@Service
class JdbcDisposals implements Disposals {

    private final DueRecords due;
    private final ListRows lists;
    private final ItemRows items;
    private final CarryingOut carrying;
    private final StoppedLists stopped;
    private final DisposalWaits waits;
    private final People people;
    private final Labs labs;
    private final LabTime labTime;
    private final Trail trail;
    private final Clock clock;

    JdbcDisposals(
            DueRecords due,
            ListRows lists,
            ItemRows items,
            CarryingOut carrying,
            StoppedLists stopped,
            DisposalWaits waits,
            People people,
            Labs labs,
            LabTime labTime,
            Trail trail,
            Clock clock) {
        this.due = due;
        this.lists = lists;
        this.items = items;
        this.carrying = carrying;
        this.stopped = stopped;
        this.waits = waits;
        this.people = people;
        this.labs = labs;
        this.labTime = labTime;
        this.trail = trail;
        this.clock = clock;
    }

    @Override
    @Transactional(readOnly = true)
    public Preview preview() {
        List<DueRecords.Due> now = due.now();
        String month = YearMonth.from(labTime.today()).toString();
        return new Preview(
                month, now, fingerprint(month, now), lists.ofMonth(lab(), month).orElse(null));
    }

    @Override
    @Transactional(readOnly = true)
    public Overview overview() {
        String month = YearMonth.from(labTime.today()).toString();
        return new Overview(month, due.counted(), lists.ofMonth(lab(), month).orElse(null), waits.inForce());
    }

    private static String fingerprint(String month, List<DueRecords.Due> due) {
        StringBuilder text = new StringBuilder(month).append('\n');
        for (DueRecords.Due one : due) {
            one.records()
                    .forEach(record -> text.append(one.kind().name())
                            .append(' ')
                            .append(one.rule().number())
                            .append(' ')
                            .append(record.id())
                            .append('\n'));
        }
        return Sha256.of(text.toString());
    }

    @Override
    @Transactional
    public Outcome approve(String fingerprint, PersonId by) {
        Preview preview = preview();
        if (preview.approved() != null) {
            return new Outcome.Refused(
                    "The list of " + preview.month() + " was approved already. The next one is next month’s.");
        }
        if (preview.records() == 0) {
            return new Outcome.Refused("Nothing is due.");
        }
        if (!preview.fingerprint().equals(fingerprint)) {
            return new Outcome.Refused("What is due has changed since you looked at it. Look at it again.");
        }
        UUID id = Id.newValue();
        Instant now = SqlTime.stored(clock.instant());
        // by the lab's days, so that it comes at the same time of day
        Instant from =
                now.atZone(labTime.zone()).plusDays(waits.inForce().days()).toInstant();
        lists.insert(
                new NewList(id, lab(), preview.month(), fingerprint, preview.records(), by, now, from), preview.due());
        TrailEntry entry = TrailEntry.of(
                lab(),
                "retention.list-approved",
                id,
                by,
                people.printedName(by) + " approved the disposal list of " + preview.month() + ", " + preview.records()
                        + " records.");
        for (DueRecords.Due one : preview.due()) {
            entry = one.records().isEmpty()
                    ? entry
                    : entry.with(
                            one.kind().name(),
                            one.records().size() + ", kept " + one.rule().words());
        }
        trail.append(entry.with("from", from).with("fingerprint", fingerprint));
        return new Outcome.Approved(id);
    }

    @Override
    public Optional<String> stop(UUID list, String reason, PersonId by) {
        return stopped.stop(list, reason, by);
    }

    @Override
    @Transactional(readOnly = true)
    public List<Standing> standing(UUID list, int after, int most) {
        return stopped.standing(list, after, most);
    }

    @Override
    @Transactional(readOnly = true)
    public List<MonthList> lists(int atMost) {
        return lists.latest(lab(), atMost);
    }

    @Override
    @Transactional(readOnly = true)
    public Optional<MonthList> find(UUID id) {
        return lists.find(id);
    }

    @Override
    @Transactional(readOnly = true)
    public List<LogLine> log() {
        return items.log(lab());
    }

    @Override
    public int carryOut(int most) {
        return carrying.carryOut(most);
    }

    private LabId lab() {
        return labs.theLab().id();
    }
}
