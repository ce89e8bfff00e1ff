package org.standclear.retention.records;

import java.time.Instant;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.springframework.stereotype.Component;
import org.standclear.platform.lab.Labs;
import org.standclear.platform.retention.Candidate;
import org.standclear.platform.retention.KeepsBack;
import org.standclear.platform.retention.RecordKind;

/** Why records whose time is over do not come onto the next list: a room's reason, a hold, or that they are on one. */
@Component
class WhatKeeps {

    private static final String ON_A_LIST = "on a list that waits to be carried out";

    private final List<KeepsBack> keepers;
    private final ItemRows items;
    private final Labs labs;

    WhatKeeps(List<KeepsBack> keepers, ItemRows items, Labs labs) {
        this.keepers = List.copyOf(keepers);
        this.items = items;
        this.labs = labs;
    }

    /** Everything that keeps records back, as it is at this moment. */
    Asked ask(Instant now) {
        return new Asked(now, keepers.stream().map(KeepsBack::now).toList());
    }

    /** The reasons by record; those that nothing keeps are left out. */
    Map<UUID, String> why(RecordKind kind, List<Candidate> records, Asked asked) {
        Set<UUID> waiting = items.waiting(
                labs.theLab().id(), kind, records.stream().map(Candidate::id).toList());
        Map<UUID, String> why = new HashMap<>();
        for (Candidate record : records) {
            String reason = waiting.contains(record.id()) ? ON_A_LIST : asked.why(kind, record);
            if (!reason.isEmpty()) {
                why.put(record.id(), reason);
            }
        }
        return why;
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
