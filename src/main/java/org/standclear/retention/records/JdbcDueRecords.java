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
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import org.standclear.platform.retention.Candidate;
import org.standclear.platform.retention.Disposable;
import org.standclear.platform.retention.RecordKind;
import org.standclear.platform.retention.Stretch;
import org.standclear.platform.retention.Stretch.Position;
import org.standclear.platform.time.LabTime;
import org.standclear.retention.DueRecords;
import org.standclear.retention.KeepingRule;
import org.standclear.retention.KeepingRules;
import org.standclear.retention.KeepingTime;
import org.standclear.retention.records.WhatKeeps.Asked;

/** Asks every room for what may be over, by the rules in force, and every room for what it keeps back. */
@Component
class JdbcDueRecords implements DueRecords {

    /** So many are asked for at once where few are shown, and so often: one page never reads more. */
    private static final int STRETCH = 200;

    private static final int STRETCHES = 10;

    private final Map<RecordKind, Disposable> rooms = new EnumMap<>(RecordKind.class);
    private final WhatKeeps keeps;
    private final KeepingRules rules;
    private final OwnRecordsOfLab own;
    private final LabTime labTime;
    private final Clock clock;

    JdbcDueRecords(
            List<Disposable> rooms,
            WhatKeeps keeps,
            KeepingRules rules,
            OwnRecordsOfLab own,
            LabTime labTime,
            Clock clock) {
        rooms.forEach(room -> this.rooms.put(room.kind(), room));
        this.keeps = keeps;
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
    public List<Counted> counted() {
        Asked asked = ask();
        return Stream.of(RecordKind.values())
                .map(kind -> counted(rules.inForce(kind), asked))
                .toList();
    }

    @Override
    public Counted wouldBeDue(RecordKind kind, KeepingTime time) {
        return counted(new KeepingRule(kind, 0, time), ask());
    }

    private Due due(KeepingRule rule, Asked asked) {
        Sorted sorted = sorted(rule, asked, MOST_OF_A_KIND);
        List<DueRecord> records = new ArrayList<>(sorted.due().stream()
                .map(record -> new DueRecord(record.id(), record.clockStart()))
                .toList());
        records.sort(Comparator.comparing(DueRecord::clockStart)
                .thenComparing(one -> one.id().toString()));
        return new Due(rule, records, sorted.keptBack());
    }

    private Counted counted(KeepingRule rule, Asked asked) {
        Sorted sorted = sorted(rule, asked, COUNTED);
        List<Candidate> due = sorted.due();
        return new Counted(
                rule,
                due.size(),
                sorted.keptBack(),
                sorted.more(),
                due.isEmpty() ? null : due.get(0).clockStart(),
                due.isEmpty() ? null : due.get(due.size() - 1).clockStart());
    }

    /** What is due of those that were looked at, and what is not. */
    private record Sorted(List<Candidate> due, Map<String, Integer> keptBack, boolean more) {}

    private Sorted sorted(KeepingRule rule, Asked asked, int atMost) {
        List<Candidate> due = new ArrayList<>();
        Map<String, Integer> keptBack = new TreeMap<>();
        Optional<Instant> before = rule.time().startsBefore(asked.now(), labTime.zone());
        if (before.isEmpty()) {
            return new Sorted(due, keptBack, false);
        }
        List<Candidate> found = room(rule.kind()).startedIn(Stretch.first(before.get(), atMost));
        List<Candidate> over = over(rule, found, asked);
        Map<UUID, String> why = keeps.why(rule.kind(), over, asked);
        for (Candidate record : over) {
            String reason = why.getOrDefault(record.id(), "");
            if (reason.isEmpty()) {
                due.add(record);
            } else {
                keptBack.merge(reason, 1, Integer::sum);
            }
        }
        return new Sorted(due, keptBack, found.size() == atMost);
    }

    private List<Candidate> over(KeepingRule rule, List<Candidate> found, Asked asked) {
        return own.of(found).stream()
                .filter(record -> isOver(rule, record, asked))
                .toList();
    }

    private boolean isOver(KeepingRule rule, Candidate record, Asked asked) {
        return rule.time().isOver(record.clockStart(), asked.now(), labTime.zone());
    }

    @Override
    public Page page(RecordKind kind, @Nullable Position after, int size) {
        KeepingRule rule = rules.inForce(kind);
        Asked asked = ask();
        Optional<Instant> before = rule.time().startsBefore(asked.now(), labTime.zone());
        List<Candidate> over = new ArrayList<>();
        Position at = after;
        boolean end = before.isEmpty();
        for (int i = 0; i < STRETCHES && over.size() <= size && !end; i++) {
            List<Candidate> some = room(kind).startedIn(new Stretch(before.orElseThrow(), at, STRETCH));
            over.addAll(over(rule, some, asked));
            at = some.isEmpty() ? at : Position.of(some.get(some.size() - 1));
            end = some.size() < STRETCH;
        }
        List<Candidate> shown = over.subList(0, Math.min(size, over.size()));
        Position next = over.size() > size ? Position.of(shown.get(size - 1)) : end ? null : at;
        Map<UUID, String> why = keeps.why(kind, shown, asked);
        return new Page(
                shown.stream()
                        .map(record -> new Line(
                                record.id(), record.said(), record.clockStart(), why.getOrDefault(record.id(), "")))
                        .toList(),
                next);
    }

    /** Everything that keeps records back, as it is at this moment. */
    Asked ask() {
        return keeps.ask(clock.instant());
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
}
