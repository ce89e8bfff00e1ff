package org.standclear.cell;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.List;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.context.ApplicationContext;
import org.standclear.booking.SampleLab;
import org.standclear.cell.Equipment.Item;
import org.standclear.cell.Equipment.Kept;
import org.standclear.cell.Equipment.Kind;
import org.standclear.cell.ToolChanges.Outcome;
import org.standclear.people.DutyRegister;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.Id;
import org.standclear.platform.ids.PersonId;
import org.standclear.testing.MovableClock;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;

/** A registered tool is fitted when two people have read its offset alike, and that makes the cell's next version. */
class ToolChangeIT {

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

        private PersonId adaeze = PersonId.next();
        private PersonId hemi = PersonId.next();
        private CellId cell = CellId.next();

        @BeforeEach
        void aCell() {
            clock.moveToStart();
            SampleLab lab = new SampleLab(application);
            adaeze = onDuty(lab.technician("Adaeze Lanternby").id());
            hemi = onDuty(lab.technician("Hemi Coppergate").id());
            cell = SampleCell.inForce(register, SampleCell.name());
        }

        private PersonId onDuty(PersonId person) {
            application
                    .getBean(DutyRegister.class)
                    .plan(person, MovableClock.START, MovableClock.START.plus(Duration.ofHours(9)), null);
            return person;
        }

        private Item tool(String code, double z) {
            Item item = new Item(
                    Id.newValue(),
                    Kind.TOOL,
                    code,
                    "screw-bit holder",
                    0.55,
                    List.of(0.0, 2.5, z),
                    30.0,
                    true,
                    adaeze,
                    clock.instant(),
                    null);
            assertThat(equipment.register(item)).isInstanceOf(Kept.Registered.class);
            return item;
        }

        private static String code() {
            return "S-" + UUID.randomUUID().toString().substring(0, 6);
        }

        private Item approved(String code) {
            Item item = tool(code, -70);
            assertThat(equipment.approve(item.id(), hemi)).isInstanceOf(Kept.Registered.class);
            return item;
        }

        private String refused(Outcome outcome) {
            assertThat(outcome).isInstanceOf(Outcome.Refused.class);
            return ((Outcome.Refused) outcome).says();
        }

        private CellFacts facts() {
            return register.facts(cells.current(cell));
        }

        @Test
        void needsASecondPersonInTheRegister() {
            Item item = tool(code(), -70);
            assertThat(((Kept.Refused) equipment.approve(item.id(), adaeze)).says())
                    .contains("another person approves");
            assertThat(refused(changes.begin(cell, item.id(), adaeze))).contains("second person has approved");
        }

        @Test
        void makesTheNextVersionOfWhatTwoPeopleRead() {
            Item item = approved(code());
            int before = cells.current(cell).number();
            assertThat(changes.begin(cell, item.id(), adaeze)).isInstanceOf(Outcome.Going.class);
            assertThat(cells.obstacles(cell, clock.instant()))
                    .extracting(Cells.Obstacle::code)
                    .contains("tool-change-open");
            clock.moveBy(Duration.ofSeconds(30));
            assertThat(changes.read(cell, item.code(), List.of(0.0, 2.5, -70.0), adaeze))
                    .isInstanceOf(Outcome.Going.class);
            assertThat(changes.read(cell, item.code(), List.of(0.0, 2.5, -70.0), adaeze))
                    .as("one person twice is one reading")
                    .isInstanceOf(Outcome.Going.class);
            assertThat(changes.read(cell, item.code(), List.of(0.0, 2.5, -70.0), hemi))
                    .isEqualTo(new Outcome.Done(before + 1));

            CellVersion version = cells.current(cell);
            assertThat(version.number()).isEqualTo(before + 1);
            assertThat(version.fittedTool()).isEqualTo(item.code());
            assertThat(version.proposedBy()).isEqualTo(adaeze);
            assertThat(version.approvedBy()).isEqualTo(hemi);
            assertThat(facts().fittedOffsetMm()).containsExactly(0.0, 2.5, -70.0);
            assertThat(facts().armAndTools())
                    .extracting(CellFacts.Fact::shown)
                    .anyMatch(shown -> shown.contains("0.55 kg") && shown.contains("sharp edges"));
            assertThat(changes.open(cell)).isEmpty();
            assertThat(cells.obstacles(cell, clock.instant()))
                    .extracting(Cells.Obstacle::code)
                    .doesNotContain("tool-change-open");
        }

        @Test
        void refusesTwoReadingsThatDifferAndGivesNoneAway() {
            Item item = approved(code());
            changes.begin(cell, item.id(), adaeze);
            clock.moveBy(Duration.ofSeconds(30));
            changes.read(cell, item.code(), List.of(0.0, 2.5, -60.0), adaeze);
            assertThat(refused(changes.read(cell, item.code(), List.of(0.0, 2.5, -70.0), hemi)))
                    .contains("do not agree")
                    .doesNotContain("60")
                    .doesNotContain("70");
            int before = cells.current(cell).number();
            clock.moveBy(Duration.ofSeconds(30));
            assertThat(changes.read(cell, item.code(), List.of(0.0, 2.5, -70.0), adaeze))
                    .isEqualTo(new Outcome.Done(before + 1));
        }

        @Test
        void refusesTwoWhoAgreeOnAnotherOffsetThanTheRegister() {
            Item item = approved(code());
            changes.begin(cell, item.id(), adaeze);
            clock.moveBy(Duration.ofSeconds(30));
            changes.read(cell, item.code(), List.of(0.0, 0.0, -60.0), adaeze);
            assertThat(refused(changes.read(cell, item.code(), List.of(0.0, 0.0, -60.0), hemi)))
                    .contains("do not agree");
            assertThat(cells.current(cell).fittedTool()).isEqualTo("G-02");
            changes.giveUp(cell, hemi);
            assertThat(changes.open(cell)).isEmpty();
        }

        @Test
        void takesTheApprovedRowInThePlaceOfTheOneBefore() {
            String code = code();
            Item first = approved(code);
            Item corrected = tool(code, -71);
            assertThat(equipment.all()).extracting(Item::id).contains(first.id(), corrected.id());
            equipment.approve(corrected.id(), hemi);
            assertThat(equipment.all())
                    .extracting(Item::id)
                    .contains(corrected.id())
                    .doesNotContain(first.id());
        }

        @Test
        void refusesAToolThatWasMeasuredAnewSinceTheChangeBegan() {
            String code = code();
            Item first = approved(code);
            assertThat(changes.begin(cell, first.id(), adaeze)).isInstanceOf(Outcome.Going.class);
            Item corrected = approved(code);
            clock.moveBy(Duration.ofSeconds(30));
            changes.read(cell, code, List.of(0.0, 2.5, -70.0), adaeze);
            assertThat(refused(changes.read(cell, code, List.of(0.0, 2.5, -70.0), hemi)))
                    .contains("measured anew");
            assertThat(cells.current(cell).fittedTool()).isEqualTo("G-02");

            changes.giveUp(cell, hemi);
            assertThat(refused(changes.begin(cell, first.id(), adaeze))).contains("measured anew");
            assertThat(changes.begin(cell, corrected.id(), adaeze)).isInstanceOf(Outcome.Going.class);
        }

        @Test
        void refusesAMassThatIsNoneAndAToolWithoutOffset() {
            Item item = new Item(
                    Id.newValue(),
                    Kind.PART,
                    "P-1",
                    "peg",
                    Double.NaN,
                    List.of(),
                    null,
                    false,
                    adaeze,
                    clock.instant(),
                    null);
            assertThat(((Kept.Refused) equipment.register(item)).field()).isEqualTo("massKg");
            Item tool = new Item(
                    Id.newValue(), Kind.TOOL, "T-1", "grip", 1, List.of(), null, false, adaeze, clock.instant(), null);
            assertThat(((Kept.Refused) equipment.register(tool)).field()).isEqualTo("offsetX");
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
