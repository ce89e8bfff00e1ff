package org.standclear.retention.records;

import java.time.Clock;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.springframework.stereotype.Component;
import org.standclear.platform.retention.Candidate;
import org.standclear.platform.retention.Disposable;
import org.standclear.platform.retention.KeepsBack;
import org.standclear.platform.retention.RecordKind;
import org.standclear.platform.time.LabTime;
import org.standclear.retention.DueRecords;
import org.standclear.retention.KeepingRule;
import org.standclear.retention.KeepingRules;
import org.standclear.retention.KeepingTime;

/** Asks every room for what may be over, by the rules in force, and every room for what it keeps back. */
@Component
class JdbcDueRecords implements DueRecords {

    private final Map<RecordKind, Disposable> rooms = new EnumMap<>(RecordKind.class);
    private final List<KeepsBack> keepers;
    private final KeepingRules rules;
    private final OwnRecordsOfLab own;
    private final LabTime labTime;
    private final Clock clock;

    JdbcDueRecords(
            List<Disposable> rooms,
            List<KeepsBack> keepers,
            KeepingRules rules,
            OwnRecordsOfLab own,
            LabTime labTime,
            Clock clock) {
        rooms.forEach(room -> this.rooms.put(room.kind(), room));
        this.keepers = List.copyOf(keepers);
        this.rules = rules;
        this.own = own;
        this.labTime = labTime;
        this.clock = clock;
    }

    /** The room that disposes of a kind. */
    Disposable room(RecordKind kind) {
        return Optional.ofNullable(rooms.get(kind))
                .orElseThrow(() -> new IllegalStateException("no room disposes of " + kind));
    }

    @Override
    public List<Due> now() {
        Asked asked = ask();
        return Stream.of(RecordKind.values())
                .map(kind -> due(rules.inForce(kind), asked))
                .toList();
    }

    @Override
    public int wouldBeDue(RecordKind kind, KeepingTime time) {
        return due(new KeepingRule(kind, 0, time), ask()).records().size();
    }

    private Due due(KeepingRule rule, Asked asked) {
        List<DueRecord> records = new ArrayList<>();
        Map<String, Integer> keptBack = new TreeMap<>();
        Optional<Instant> before = rule.time().startsBefore(asked.now(), labTime.zone());
        if (before.isPresent()) {
            for (Candidate record : own.of(room(rule.kind()).startedBefore(before.get(), MOST_OF_A_KIND))) {
                if (!isOver(rule, record, asked)) {
                    continue;
                }
                String why = asked.why(rule.kind(), record);
                if (why.isEmpty()) {
                    records.add(new DueRecord(record.id(), record.clockStart()));
                } else {
                    keptBack.merge(why, 1, Integer::sum);
                }
            }
        }
        records.sort(Comparator.comparing(DueRecord::clockStart)
                .thenComparing(one -> one.id().toString()));
        return new Due(rule, records, keptBack);
    }

    private boolean isOver(KeepingRule rule, Candidate record, Asked asked) {
        return rule.time().isOver(record.clockStart(), asked.now(), labTime.zone());
    }

    /** Everything that keeps records back, as it is at this moment. */
    Asked ask() {
        return new Asked(clock.instant(), keepers.stream().map(KeepsBack::now).toList());
    }

    /** Why a record of an approved list stays after all; empty when it may go. */
    String whyItStays(RecordKind kind, Candidate record, Asked asked) {
        return isOver(rules.inForce(kind), record, asked)
                ? asked.why(kind, record)
                : "its time is longer now, or its clock started anew";
    }

    /** A record of that kind and id, while there is something of it to dispose of. */
    Optional<Candidate> find(RecordKind kind, UUID id) {
        return room(kind).find(id);
    }

    /** Reasons that were read at an instant. */
    record Asked(Instant now, List<KeepsBack.Reasons> reasons) {

        String why(RecordKind kind, Candidate record) {
            return Stream.concat(Stream.of(record.keptBack()), reasons.stream().map(reason -> reason.why(kind, record)))
                    .filter(words -> !words.isEmpty())
                    .distinct()
                    .collect(Collectors.joining("; "));
        }
    }
}
