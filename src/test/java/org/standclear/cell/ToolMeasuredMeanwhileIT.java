package org.standclear.cell;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.List;
import java.util.UUID;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import java.util.function.Supplier;
import org.assertj.core.api.InstanceOfAssertFactories;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.context.ApplicationContext;
import org.springframework.jdbc.core.JdbcTemplate;
import org.springframework.transaction.support.TransactionTemplate;
import org.standclear.booking.SampleLab;
import org.standclear.cell.Equipment.Item;
import org.standclear.cell.Equipment.Kept;
import org.standclear.cell.Equipment.Kind;
import org.standclear.cell.ToolChanges.Outcome;
import org.standclear.people.DutyRegister;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.Id;
import org.standclear.platform.ids.PersonId;
import org.standclear.testing.LockWaits;
import org.standclear.testing.MovableClock;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;

/**
 * Somebody approves a tool measured anew and goes on to the cells where it is, while others change that tool at a cell: one
 * follows the other, and neither waits for what the other has.
 */
class ToolMeasuredMeanwhileIT {

    abstract static class Cases {

        @Autowired
        CellRegister register;

        @Autowired
        Cells cells;

        @Autowired
        Equipment equipment;

        @Autowired
        ToolChanges changes;

        @Autowired
        MovableClock clock;

        @Autowired
        ApplicationContext application;

        @Autowired
        TransactionTemplate transaction;

        @Autowired
        JdbcTemplate jdbc;

        private final String code = "S-" + UUID.randomUUID().toString().substring(0, 6);
        private PersonId adaeze = PersonId.next();
        private PersonId hemi = PersonId.next();
        private CellId cell = CellId.next();
        private UUID before = Id.newValue();
        private UUID anew = Id.newValue();

        @BeforeEach
        void aToolMeasuredAnew() {
            clock.moveToStart();
            SampleLab lab = new SampleLab(application);
            adaeze = onDuty(lab.technician("Adaeze Lanternby").id());
            hemi = onDuty(lab.technician("Hemi Coppergate").id());
            cell = SampleCell.inForce(register, SampleCell.name());
            before = registered(-70);
            assertThat(equipment.approve(before, hemi)).isInstanceOf(Kept.Registered.class);
            anew = registered(-71);
        }

        private PersonId onDuty(PersonId person) {
            application
                    .getBean(DutyRegister.class)
                    .plan(person, MovableClock.START, MovableClock.START.plus(Duration.ofHours(9)), null);
            return person;
        }

        private UUID registered(double z) {
            List<Double> offset = List.of(0.0, 2.5, z);
            Item item = new Item(
                    Id.newValue(),
                    Kind.TOOL,
                    code,
                    "screw-bit holder",
                    0.55,
                    offset,
                    30.0,
                    true,
                    adaeze,
                    clock.instant(),
                    null);
            assertThat(equipment.register(item)).isInstanceOf(Kept.Registered.class);
            return item.id();
        }

        /** What becomes of an act that comes while the new measure is approved, before its cells follow. */
        private Outcome meanwhile(Supplier<Outcome> act) {
            LockWaits waits = new LockWaits(jdbc);
            BlockingQueue<Long> session = new ArrayBlockingQueue<>(1);
            CompletableFuture<Outcome> acting = transaction.execute(approving -> {
                assertThat(equipment.approve(anew, hemi)).isInstanceOf(Kept.Registered.class);
                CompletableFuture<Outcome> other = CompletableFuture.supplyAsync(() -> transaction.execute(status -> {
                    session.add(waits.mine());
                    return act.get();
                }));
                try {
                    waits.await(session.take());
                } catch (InterruptedException stopped) {
                    throw new AssertionError(stopped);
                }
                cells.lock(cell);
                return other;
            });
            assertThat(acting).succeedsWithin(20, TimeUnit.SECONDS);
            return acting.join();
        }

        @Test
        void doesNotBeginWithTheToolAsItWas() {
            assertThat(meanwhile(() -> changes.begin(cell, before, adaeze)))
                    .asInstanceOf(InstanceOfAssertFactories.type(Outcome.Refused.class))
                    .extracting(Outcome.Refused::says)
                    .asString()
                    .contains("measured anew since");
            assertThat(changes.open(cell)).isEmpty();
        }

        @Test
        void doesNotEndWithTheToolAsItWas() {
            assertThat(changes.begin(cell, before, adaeze)).isInstanceOf(Outcome.Going.class);
            List<Double> offset = List.of(0.0, 2.5, -70.0);
            assertThat(changes.read(cell, code, offset, adaeze)).isInstanceOf(Outcome.Going.class);

            assertThat(meanwhile(() -> changes.read(cell, code, offset, hemi)))
                    .asInstanceOf(InstanceOfAssertFactories.type(Outcome.Refused.class))
                    .extracting(Outcome.Refused::says)
                    .asString()
                    .contains("was measured anew since this change began");
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
