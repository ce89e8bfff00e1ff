package org.standclear.retention;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.time.Period;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.transaction.support.TransactionTemplate;
import org.standclear.platform.retention.RecordKind;
import org.standclear.retention.Disposals.LogLine;
import org.standclear.retention.Disposals.MonthList;
import org.standclear.retention.Disposals.Outcome;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;
import org.standclear.trail.RecordedEntry;
import org.standclear.trail.TrailReader;

/** Lists: due to the second, approved once, carried out in batches that can be killed, by two at once, into the log. */
class DisposalIT {

    abstract static class Cases extends RetentionCases {

        private List<UUID> sevenMessages() {
            List<UUID> ids = new ArrayList<>();
            for (int i = 0; i < 7; i++) {
                ids.add(told(scene().noor, "note " + i));
            }
            keepOnly(RecordKind.MESSAGES, KeepingTime.years(1));
            longAfter();
            return ids;
        }

        private long left(List<UUID> ids) {
            return ids.stream().filter(id -> count("messages", "id", id) == 1).count();
        }

        @Test
        void isDueAtTheEndAndNotASecondBefore() {
            UUID id = told(scene().noor, "a note");
            keepOnly(RecordKind.MESSAGES, new KeepingTime(Period.ofDays(10), false));
            Instant end = clock.instant().plus(Period.ofDays(10));

            clock.moveTo(end.minusSeconds(1));
            assertThat(isDue(RecordKind.MESSAGES, id)).isFalse();
            clock.moveTo(end);
            assertThat(isDue(RecordKind.MESSAGES, id)).isTrue();
            clock.moveTo(end.plusSeconds(1));
            assertThat(isDue(RecordKind.MESSAGES, id)).isTrue();
        }

        @Test
        void losesNothingWhenItIsKilledBetweenAndWithinBatches() {
            List<UUID> ids = sevenMessages();
            UUID list = approved();
            assertThat(left(ids)).isEqualTo(7);

            assertThat(disposals.carryOut(2)).isEqualTo(2);
            // killed within a batch: the database takes its transaction back
            new TransactionTemplate(transactions).executeWithoutResult(status -> {
                assertThat(disposals.carryOut(3)).isEqualTo(3);
                status.setRollbackOnly();
            });
            MonthList half = disposals.find(list).orElseThrow();
            assertThat(half.settled()).isEqualTo(2);
            assertThat(half.finishedAt()).isNull();
            assertThat(disposals.log()).noneMatch(line -> line.month().equals(half.month()));

            MonthList done = carriedOut(list);
            assertThat(left(ids)).isZero();
            assertThat(done.settled()).isEqualTo(done.records());
            assertThat(logged(done).disposed()).isEqualTo(done.records());
        }

        private LogLine logged(MonthList list) {
            List<LogLine> lines = disposals.log().stream()
                    .filter(line -> line.month().equals(list.month()))
                    .toList();
            assertThat(lines).hasSize(1);
            return lines.get(0);
        }

        @Test
        void twoInstancesDisposeOfEachRecordOnce() throws Exception {
            List<UUID> ids = sevenMessages();
            UUID list = approved();
            int records = disposals.find(list).orElseThrow().records();
            ExecutorService two = Executors.newFixedThreadPool(2);
            try {
                List<Future<Integer>> counts = two.invokeAll(List.of(() -> untilDone(list), () -> untilDone(list)));
                assertThat(counts.get(0).get() + counts.get(1).get()).isEqualTo(records);
            } finally {
                two.shutdownNow();
            }
            MonthList done = carriedOut(list);
            assertThat(left(ids)).isZero();
            assertThat(logged(done).disposed()).isEqualTo(records);
            assertThat(entries(list)).containsExactly("retention.list-approved", "retention.list-carried-out");
        }

        private int untilDone(UUID list) {
            int settled = 0;
            // the other may hold the list at this moment: nothing to do now is not the end
            while (disposals.find(list).orElseThrow().finishedAt() == null) {
                settled += disposals.carryOut(1);
            }
            return settled;
        }

        private List<String> entries(UUID list) {
            return application
                    .getBean(TrailReader.class)
                    .about(everyLab.theLab().id(), list.toString())
                    .stream()
                    .map(RecordedEntry::kind)
                    .toList();
        }

        @Test
        void approvesOneListAMonthAndOnlyAsItWasShown() {
            sevenMessages();
            String shown = disposals.preview().fingerprint();
            told(scene().mateo, "in between");
            assertThat(disposals.preview().fingerprint())
                    .as("a new message is not due")
                    .isEqualTo(shown);
            clock.moveBy(java.time.Duration.ofSeconds(1));
            jdbc.sql("delete from messages where person_id = :person and subject = 'note 3'")
                    .param("person", scene().noor.id().value())
                    .update();
            assertThat(disposals.approve(shown, marit.id())).isInstanceOf(Outcome.Refused.class);

            UUID list = approved();
            Outcome again = disposals.approve(disposals.preview().fingerprint(), marit.id());
            assertThat(is(Outcome.Refused.class, again).says()).contains("approved already");
            carriedOut(list);
            assertThat(disposals.approve(disposals.preview().fingerprint(), marit.id()))
                    .as("still the same month")
                    .isInstanceOf(Outcome.Refused.class);
        }

        @Test
        void keepsWhatGotALongerTimeAfterTheApproval() {
            List<UUID> ids = sevenMessages();
            UUID list = approved();
            keepOnly(RecordKind.MESSAGES, KeepingTime.years(90));
            MonthList done = carriedOut(list);
            assertThat(left(ids)).isEqualTo(7);
            assertThat(logged(done).keptBack()).isEqualTo(done.records());
            assertThat(logged(done).rule()).startsWith("1 year");
        }

        @Test
        void leavesARecordThatTheDatabaseKeepsOnTheListAsFailed() {
            List<UUID> ids = sevenMessages();
            jdbc.sql("""
                    create table keeping_probe (message uuid, constraint keeping_probe_fk foreign key (message)
                        references messages (id))""").update();
            try {
                jdbc.sql("insert into keeping_probe values (:id)")
                        .param("id", ids.get(3))
                        .update();
                MonthList done = carriedOut(approved());
                assertThat(left(ids)).isEqualTo(1);
                assertThat(count("messages", "id", ids.get(3))).isEqualTo(1);
                assertThat(logged(done).failed()).isEqualTo(1);
                assertThat(logged(done).disposed()).isEqualTo(done.records() - 1);
            } finally {
                jdbc.sql("drop table keeping_probe").update();
            }
        }

        @Test
        void isCarriedOutAtTheEndOfItsWaitAndNotASecondBefore() {
            List<UUID> ids = sevenMessages();
            UUID list = approvedJustNow();
            Instant approvedAt = clock.instant();
            Instant from = disposals.find(list).orElseThrow().carriedOutFrom();
            assertThat(from)
                    .isEqualTo(approvedAt.atZone(labTime.zone()).plusDays(7).toInstant());

            clock.moveTo(from.minusSeconds(1));
            assertThat(disposals.carryOut(50)).isZero();
            assertThat(left(ids)).isEqualTo(7);
            assertThat(dueOf(RecordKind.MESSAGES).keptBack()).containsKey("on a list that waits to be carried out");
            clock.moveTo(from);
            carriedOut(list);
            assertThat(left(ids)).isZero();
        }

        @Test
        void letsWhoApprovedStopAListAndKeepsWhatIsStillOnIt() {
            List<UUID> ids = sevenMessages();
            UUID list = approved();
            assertThat(disposals.carryOut(2)).isEqualTo(2);
            assertThat(disposals.stop(list, "Approved by mistake.", marit.id())).isEmpty();

            assertThat(disposals.carryOut(50)).isZero();
            MonthList stopped = disposals.find(list).orElseThrow();
            assertThat(stopped.finishedAt()).isEqualTo(clock.instant());
            assertThat(java.util.Objects.requireNonNull(stopped.stopped()).reason())
                    .isEqualTo("Approved by mistake.");
            assertThat(logged(stopped).disposed()).isEqualTo(2);
            assertThat(left(ids)).isGreaterThanOrEqualTo(5);
            assertThat(logged(stopped).keptBack()).isEqualTo(stopped.records() - 2);
            assertThat(disposals.stop(list, "again", marit.id())).isPresent();
            assertThat(entries(list)).containsExactly("retention.list-approved", "retention.list-stopped");
            assertTrailIsWhole();
        }

        @Test
        void namesWhatStandsOnAListByWhatPeopleKnowAndWhatAHoldTakesOff() {
            UUID held = sevenMessages().get(0);
            UUID list = approvedJustNow();
            assertThat(disposals.standing(list, 0, 500)).anySatisfy(one -> {
                assertThat(one.said())
                        .isEqualTo("Noor Candlewick (" + scene().noor.login() + ")");
                assertThat(one.why()).isEmpty();
            });
            holds.place(
                    new LegalHold.Target.One(
                            org.standclear.platform.retention.Concern.About.PERSON,
                            scene().noor.id().value()),
                    "A claim",
                    "Office",
                    ines.id());
            assertThat(disposals.standing(list, 0, 500))
                    .filteredOn(one -> one.said().contains("(" + scene().noor.login() + ")"))
                    .hasSizeGreaterThanOrEqualTo(7)
                    .allSatisfy(one -> assertThat(one.why()).isEqualTo("legal hold"));
            var first = disposals.standing(list, 0, 3);
            var second = disposals.standing(list, first.get(2).number(), 3);
            assertThat(second.get(0).number()).isGreaterThan(first.get(2).number());
            clock.moveTo(disposals.find(list).orElseThrow().carriedOutFrom());
            carriedOut(list);
            assertThat(count("messages", "id", held)).isEqualTo(1);
        }

        @Test
        void pagesAndCountsWhatIsDueWithinABound() {
            List<UUID> ids = sevenMessages();
            var seen = new ArrayList<UUID>();
            DueRecords.Page page = due.page(RecordKind.MESSAGES, null, 3);
            while (page.next() != null) {
                page.lines().forEach(line -> seen.add(line.id()));
                page = due.page(RecordKind.MESSAGES, page.next(), 3);
            }
            page.lines().forEach(line -> seen.add(line.id()));
            assertThat(seen).doesNotHaveDuplicates().containsAll(ids);
            DueRecords.Counted counted = due.counted().stream()
                    .filter(one -> one.rule().kind() == RecordKind.MESSAGES)
                    .findFirst()
                    .orElseThrow();
            assertThat(counted.due()
                            + counted.keptBack().values().stream()
                                    .mapToInt(n -> n)
                                    .sum())
                    .isEqualTo(seen.size());
            assertThat(counted.more()).isFalse();
        }

        @Test
        void logsNobody() {
            sevenMessages();
            MonthList done = carriedOut(approved());
            LogLine line = logged(done);
            assertThat(line.toString()).doesNotContain(scene().noor.id().toString(), "Noor", "note 1");
            assertThat(line.approvedBy()).isEqualTo(marit.id());
        }
    }

    @Nested
    @OnH2
    @Keeping
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    @Keeping
    class OnPostgresEngine extends Cases {}
}
