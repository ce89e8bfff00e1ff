package org.standclear.retention.records;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import org.springframework.stereotype.Component;
import org.standclear.platform.ids.LabId;
import org.standclear.platform.lab.LabOwners;
import org.standclear.platform.lab.Labs;
import org.standclear.platform.retention.Candidate;

/** Leaves out what belongs to other labs: each lab disposes of its own records, by its own rules. */
@Component
class OwnRecordsOfLab {

    private static final int AT_ONCE = 1_000;

    private final Labs labs;
    private final LabOwners owners;

    OwnRecordsOfLab(Labs labs, LabOwners owners) {
        this.labs = labs;
        this.owners = owners;
    }

    /** Those of the present lab, in their order; what is nobody's, like an account without a role, is the first lab's. */
    List<Candidate> of(List<Candidate> records) {
        if (!labs.areSeveral() || records.isEmpty()) {
            return records;
        }
        LabId here = labs.theLab().id();
        Set<LabId> nobodys = Set.of(labs.all().get(0).id());
        Map<UUID, Set<LabId>> whose = new HashMap<>();
        for (int from = 0; from < records.size(); from += AT_ONCE) {
            List<Candidate> some = records.subList(from, Math.min(records.size(), from + AT_ONCE));
            whose.putAll(owners.of(some.stream().map(Candidate::id).toList()));
        }
        List<Candidate> own = new ArrayList<>(records);
        own.removeIf(record -> !whose.getOrDefault(record.id(), nobodys).contains(here));
        return own;
    }
}
