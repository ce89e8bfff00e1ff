package org.standclear.signoff;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.standclear.booking.BookingState;
import org.standclear.cell.Cell;
import org.standclear.cell.CellRegister;
import org.standclear.cell.Cells;
import org.standclear.cell.SampleCell;
import org.standclear.cell.VersionEffects;
import org.standclear.cell.VersionEffects.Effect;
import org.standclear.core.check.RuleSet;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.time.SqlTime;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;

/** Nobody has to look: programs of upcoming bookings are checked anew for a new cell version, and for new rules. */
class RecheckIT {

    abstract static class Cases extends BenchCases {

        @Autowired
        Rechecks rechecks;

        @Autowired
        VersionEffects effects;

        @Autowired
        CellRegister register;

        @Autowired
        Cells cells;

        /** Other tests of the same database may have left bookings behind too. */
        private void runAll() {
            while (rechecks.runPending(20) > 0) {
                // until nothing more can be brought up to date
            }
        }

        private void moveTo(int version, String file) {
            register.approve(SampleCell.proposed(register, scene().cell, file), PersonId.next(), version - 1);
        }

        private String file(int version) {
            Cell cell = cells.find(scene().cell).orElseThrow();
            return SampleCell.file(cell.name(), version);
        }

        private List<Effect> effects() {
            return effects.of(scene().cell);
        }

        @Test
        void checksAnewWithoutAnybodyLookingAndSaysWhatChanged() {
            scene().attached();
            assertThat(scene().state()).isEqualTo(BookingState.CHECKED);
            assertThat(effects()).isEmpty();

            moveTo(2, file(2).replace("z: [5, 150]", "z: [5, 70]"));
            assertThat(rechecks.pending()).isPositive();
            assertThat(effects()).singleElement().satisfies(waiting -> {
                assertThat(waiting.after()).isEqualTo("the re-check waits");
                assertThat(waiting.changed()).isFalse();
            });
            runAll();

            assertThat(scene().state()).isEqualTo(BookingState.BOOKED);
            assertThat(effects()).singleElement().satisfies(effect -> {
                assertThat(effect.before()).isEqualTo("within limits on version 1");
                assertThat(effect.after()).isEqualTo("outside limits on version 2");
                assertThat(effect.mark()).isEqualTo("outside");
                assertThat(effect.changed()).isTrue();
                assertThat(effect.operator()).isEqualTo("Noor Candlewick");
                assertThat(effect.answerHref()).startsWith("/checks/");
            });
            assertThat(record()).contains("signoff.check-lapsed");
            assertThat(lastRuleSet()).isEqualTo(RuleSet.CURRENT);
        }

        @Test
        void staysCheckedWhereTheAnswerHolds() {
            scene().attached();
            moveTo(2, file(2));
            runAll();

            assertThat(scene().state()).isEqualTo(BookingState.CHECKED);
            assertThat(effects()).singleElement().satisfies(effect -> {
                assertThat(effect.after()).isEqualTo("within limits on version 2");
                assertThat(effect.changed()).isFalse();
            });
        }

        @Test
        void namesTheVersionBeforeWhenTheCellMovesTwice() {
            scene().attached();
            moveTo(2, file(2).replace("z: [5, 150]", "z: [5, 70]"));
            runAll();
            clock.moveBy(Duration.ofSeconds(5));
            moveTo(3, file(3));
            runAll();

            assertThat(scene().state()).isEqualTo(BookingState.CHECKED);
            assertThat(effects()).singleElement().satisfies(effect -> {
                assertThat(effect.before()).isEqualTo("outside limits on version 2");
                assertThat(effect.after()).isEqualTo("within limits on version 3");
                assertThat(effect.changed()).isTrue();
            });
        }

        @Test
        void leavesBookingsAloneWhoseSlotIsOver() {
            scene().attached();
            clock.moveTo(BenchScene.START.plus(Duration.ofMinutes(31)));
            moveTo(2, file(2));
            runAll();

            assertThat(checks()).isEqualTo(1);
            assertThat(effects()).isEmpty();
        }

        @Test
        void checksNoMoreInOneGoThanAsked() {
            scene().attached();
            moveTo(2, file(2));

            assertThat(rechecks.runPending(0)).isZero();
            assertThat(checks()).isEqualTo(1);
            assertThat(rechecks.runPending(1)).isLessThanOrEqualTo(1);
        }

        @Test
        void lapsesAWaitingReleaseByItself() {
            scene().released();
            moveTo(2, file(2));
            runAll();

            assertThat(scene().state()).isEqualTo(BookingState.CHECKED);
            assertThat(releases.latest(scene().booking).orElseThrow().lapsed()).isNotNull();
        }

        @Test
        void checksAnewWhenTheRulesOfTheCheckHaveRisen() {
            scene().attached();
            answeredByRulesBefore(clock.instant().plusSeconds(1));
            clock.moveBy(Duration.ofSeconds(5));
            assertThat(lastRuleSet()).isEqualTo("0");
            runAll();

            assertThat(scene().state()).isEqualTo(BookingState.CHECKED);
            assertThat(lastRuleSet()).isEqualTo(RuleSet.CURRENT);
            assertThat(effects())
                    .singleElement()
                    .satisfies(effect -> assertThat(effect.before()).isEqualTo("within limits by the rules before"));
        }

        /** As the database looks after an upgrade of the program: the latest answer is one of older rules. */
        private void answeredByRulesBefore(Instant at) {
            UUID old = UUID.randomUUID();
            jdbc.sql("""
                    insert into check_answers (id, revision_id, cell_id, cell_version, limits, rule_set, verdict, answer,
                        bench, details, answered_at)
                    select :id, revision_id, cell_id, cell_version, limits, '0', verdict, answer, bench, details, answered_at
                    from check_answers where revision_id = :revision""")
                    .param("id", old)
                    .param("revision", scene().revision().id().value())
                    .update();
            jdbc.sql("""
                    insert into signoff_preparations (id, booking_id, revision_id, cell_id, cell_version, answer_id,
                        within_limits, checked_at)
                    select :id, booking_id, revision_id, cell_id, cell_version, :answer, within_limits, :at
                    from signoff_preparations where booking_id = :booking""")
                    .param("id", UUID.randomUUID())
                    .param("answer", old)
                    .param("at", SqlTime.toSql(at))
                    .param("booking", scene().booking.value())
                    .update();
        }

        private String lastRuleSet() {
            return jdbc.sql("""
                    select a.rule_set from signoff_preparations p join check_answers a on a.id = p.answer_id
                    where p.booking_id = :booking order by p.checked_at desc, p.id desc""")
                    .param("booking", scene().booking.value())
                    .query(String.class)
                    .list()
                    .get(0);
        }

        private int checks() {
            return jdbc.sql("select count(*) from signoff_preparations where booking_id = :booking")
                    .param("booking", scene().booking.value())
                    .query(Integer.class)
                    .single();
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
