package org.standclear.retention.records;

import java.time.Clock;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;
import org.standclear.people.People;
import org.standclear.platform.ids.LabId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.lab.Labs;
import org.standclear.platform.retention.Candidate;
import org.standclear.platform.time.SqlTime;
import org.standclear.retention.Disposals.MonthList;
import org.standclear.retention.Disposals.Standing;
import org.standclear.retention.Disposals.Stopped;
import org.standclear.retention.records.WhatKeeps.Asked;
import org.standclear.trail.Trail;
import org.standclear.trail.TrailEntry;

/** An approved list before it is carried out: what stands on it, and that somebody stops it. */
@Component
class StoppedLists {

    private final ItemRows items;
    private final ListRows lists;
    private final JdbcDueRecords due;
    private final People people;
    private final Labs labs;
    private final Trail trail;
    private final Clock clock;

    StoppedLists(
            ItemRows items, ListRows lists, JdbcDueRecords due, People people, Labs labs, Trail trail, Clock clock) {
        this.items = items;
        this.lists = lists;
        this.due = due;
        this.people = people;
        this.labs = labs;
        this.trail = trail;
        this.clock = clock;
    }

    @Transactional
    public Optional<String> stop(UUID list, String reason, PersonId by) {
        LabId lab = labs.theLab().id();
        if (!items.lockToStop(lab, list)) {
            return Optional.of("It is carried out, or was stopped already.");
        }
        Instant now = SqlTime.stored(clock.instant());
        items.keepTheRest(list, "the list was stopped", now);
        items.finish(list, now);
        lists.stop(list, new Stopped(by, now, reason));
        MonthList stopped = lists.find(list).orElseThrow();
        // why stays in the table of lists: the reason may name people, and the record is never disposed of
        trail.append(TrailEntry.of(
                        lab,
                        "retention.list-stopped",
                        list,
                        by,
                        people.printedName(by) + " stopped the disposal list of " + stopped.month() + ".")
                .with("gone", gone(stopped)));
        return Optional.empty();
    }

    private static int gone(MonthList list) {
        return list.kinds().stream().mapToInt(kind -> kind.disposed()).sum();
    }

    /** In the list's order, with what keeps each back at this moment while it waits. */
    List<Standing> standing(UUID list, int after, int most) {
        Asked asked = due.ask();
        return items.standing(list, after, most).stream()
                .map(one -> standing(one, asked))
                .toList();
    }

    private Standing standing(ItemRows.Standing row, Asked asked) {
        ItemRows.Item item = row.item();
        Optional<Candidate> record = due.find(item.kind(), item.record());
        String why = row.pending()
                ? record.map(one -> due.whyItStays(item.kind(), one, asked)).orElse("it is gone already")
                : row.because();
        return new Standing(
                item.number(), item.kind(), record.map(Candidate::said).orElse(""), row.clockStart(), why);
    }
}
