package org.standclear.retention;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.retention.RecordKind;

/** Lists of records that an administrator approved for disposal, and what became of them. */
public interface Disposals {

    /** What is due now, and what would be approved. */
    Preview preview();

    /** Approves the list that the preview showed; the job carries it out from then on. */
    Outcome approve(String fingerprint, PersonId by);

    /** The lists so far, latest first. */
    List<MonthList> lists(int atMost);

    /** One list. */
    Optional<MonthList> find(UUID id);

    /** The disposal log, latest first. */
    List<LogLine> log();

    /**
     * Carries approved lists out for a while: so many records at most, in one transaction.
     *
     * @return how many records were settled; 0 when nothing is left to do
     */
    int carryOut(int most);

    /**
     * What is due.
     *
     * @param month in the lab's zone, as "2026-11"
     * @param fingerprint of exactly these records
     * @param approved this month's list, when there is one
     */
    record Preview(
            String month,
            List<DueRecords.Due> due,
            String fingerprint,
            @Nullable MonthList approved) {

        public Preview {
            due = List.copyOf(due);
        }

        /** How many records would go. */
        public int records() {
            return due.stream().mapToInt(one -> one.records().size()).sum();
        }
    }

    /**
     * A list of a month.
     *
     * @param settled how many of its records were dealt with so far
     * @param finishedAt null while it is carried out
     */
    record MonthList(
            UUID id,
            String month,
            int records,
            int settled,
            PersonId approvedBy,
            Instant approvedAt,
            @Nullable Instant finishedAt,
            List<Settled> kinds) {

        public MonthList {
            kinds = List.copyOf(kinds);
        }
    }

    /** How the records of a kind on a list stand. */
    record Settled(
            RecordKind kind, int pending, int disposed, int keptBack, int gone, int failed, List<String> because) {

        public Settled {
            because = List.copyOf(because);
        }
    }

    /** A line of the disposal log; the first and last start of the clocks say which stretch of time it was. */
    record LogLine(
            String month,
            RecordKind kind,
            String rule,
            int disposed,
            int keptBack,
            int gone,
            int failed,
            Instant earliestStart,
            Instant latestStart,
            PersonId approvedBy,
            Instant approvedAt,
            Instant finishedAt) {}

    /** What came of approving. */
    sealed interface Outcome {

        /** It is approved. */
        record Approved(UUID list) implements Outcome {}

        /** It is not, in words. */
        record Refused(String says) implements Outcome {}
    }
}
