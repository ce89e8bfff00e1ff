package org.standclear.retention;

import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.standclear.platform.retention.RecordKind;

/** What is due for disposal now, and what is kept back. */
public interface DueRecords {

    /** So many of a kind go onto one month's list at most; the rest is due next month. */
    int MOST_OF_A_KIND = 20_000;

    /** All that is due, kind by kind, in the order of the kinds. */
    List<Due> now();

    /** How many records of a kind would be due now if they were kept that long. */
    int wouldBeDue(RecordKind kind, KeepingTime time);

    /**
     * What is due of one kind.
     *
     * @param records that nothing keeps back
     * @param keptBack how many are kept back, by the reason
     */
    record Due(KeepingRule rule, List<DueRecord> records, Map<String, Integer> keptBack) {

        public Due {
            records = List.copyOf(records);
            keptBack = Map.copyOf(keptBack);
        }

        /** Which kind. */
        public RecordKind kind() {
            return rule.kind();
        }
    }

    /** One record that is due. */
    record DueRecord(UUID id, Instant clockStart) {}
}
