package org.standclear.retention;

import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.standclear.platform.retention.RecordKind;
import org.standclear.platform.retention.Stretch.Position;

/** What is due for disposal now, and what is kept back. */
public interface DueRecords {

    /** So many of a kind go onto one month's list at most; the rest is due next month. */
    int MOST_OF_A_KIND = 20_000;

    /** So many of a kind are looked at where they are only counted. */
    int COUNTED = 1_000;

    /** All that is due, kind by kind, in the order of the kinds. */
    List<Due> now();

    /** How much is due, kind by kind, counted up to a bound. */
    List<Counted> counted();

    /** How many records of a kind would be due now if they were kept that long, counted up to a bound. */
    Counted wouldBeDue(RecordKind kind, KeepingTime time);

    /** Records of a kind whose time is over, one by one, those whose clocks started earliest first. */
    Page page(RecordKind kind, @Nullable Position after, int size);

    /**
     * How much is due of one kind.
     *
     * @param due how many, of those that were looked at
     * @param keptBack how many are kept back, by the reason
     * @param more whether there may be more than were looked at
     * @param earliest when the first clock of what is due started; null when nothing is
     * @param latest when the last one that was looked at did
     */
    record Counted(
            KeepingRule rule,
            int due,
            Map<String, Integer> keptBack,
            boolean more,
            @Nullable Instant earliest,
            @Nullable Instant latest) {

        public Counted {
            keptBack = Map.copyOf(keptBack);
        }
    }

    /**
     * Some records of a kind.
     *
     * @param next where the following ones begin; null when there are none
     */
    record Page(List<Line> lines, @Nullable Position next) {

        public Page {
            lines = List.copyOf(lines);
        }
    }

    /**
     * A record whose time is over.
     *
     * @param said which one it is, by what people know
     * @param why what keeps it back; empty when it is due
     */
    record Line(UUID id, String said, Instant clockStart, String why) {}

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
