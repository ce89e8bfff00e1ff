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

    /** How much is due, counted up to a bound; cheap whatever has gathered. */
    Overview overview();

    /** Approves the list that the preview showed; it is carried out by itself when its wait is over. */
    Outcome approve(String fingerprint, PersonId by);

    /** Stops a list that is not carried out; what is still on it stays. Says why not, or nothing. */
    Optional<String> stop(UUID list, String reason, PersonId by);

    /** What stands on a list and is not gone, in its order: the first so many after a number. */
    List<Standing> standing(UUID list, int after, int most);

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
     * What is due, counted.
     *
     * @param approved this month's list, when there is one
     * @param waits of a list that is approved now
     */
    record Overview(
            String month,
            List<DueRecords.Counted> kinds,
            @Nullable MonthList approved,
            DisposalWaits.Wait waits) {

        public Overview {
            kinds = List.copyOf(kinds);
        }

        /** How many records were counted as due. */
        public int records() {
            return kinds.stream().mapToInt(DueRecords.Counted::due).sum();
        }

        /** Whether there may be more than were counted. */
        public boolean isMore() {
            return kinds.stream().anyMatch(DueRecords.Counted::more);
        }
    }

    /**
     * A record on a list that is still there.
     *
     * @param said which one it is, by what people know; empty when it is gone though the list does not know
     * @param why why it stays; empty when it goes when the list is carried out
     */
    record Standing(int number, RecordKind kind, String said, Instant clockStart, String why) {}

    /** That somebody stopped a list, and why. */
    record Stopped(PersonId by, Instant at, String reason) {}

    /**
     * A list of a month.
     *
     * @param settled how many of its records were dealt with so far
     * @param carriedOutFrom the end of its wait
     * @param stopped null when nobody stopped it
     * @param finishedAt null while it waits or is carried out
     */
    record MonthList(
            UUID id,
            String month,
            int records,
            int settled,
            PersonId approvedBy,
            Instant approvedAt,
            Instant carriedOutFrom,
            @Nullable Stopped stopped,
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
