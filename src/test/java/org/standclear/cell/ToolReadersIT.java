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
import org.standclear.cell.Equipment.Kind;
import org.standclear.cell.ToolChanges.Outcome;
import org.standclear.people.DutyRegister;
import org.standclear.people.Person;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.Id;
import org.standclear.platform.security.Role;
import org.standclear.testing.MovableClock;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;

/** Whose reading counts in a tool change: two people, of whom one is lab staff on duty and authorised at the cell. */
class ToolReadersIT {

    abstract static class Cases {

        private static final List<Double> OFFSET = List.of(0.0, 2.5, -70.0);

        @Autowired
        ApplicationContext application;

        @Autowired
        CellRegister register;

        @Autowired
        Cells cells;

        @Autowired
        Equipment equipment;

        @Autowired
        ToolChanges changes;

        @Autowired
        ToolReadings readings;

        @Autowired
        MovableClock clock;

        private CellId cell = CellId.next();
        private String code = "";
        private int version;

        @BeforeEach
        void aToolChangeGoesOn() {
            clock.moveToStart();
            cell = SampleCell.inForce(register, SampleCell.name());
            code = "S-" + UUID.randomUUID().toString().substring(0, 6);
            Person one = lab().technician("Wren Saltmarsh");
            Item item = new Item(
                    Id.newValue(),
                    Kind.TOOL,
                    code,
                    "bit holder",
                    0.55,
                    OFFSET,
                    30.0,
                    true,
                    one.id(),
                    clock.instant(),
                    null);
            equipment.register(item);
            equipment.approve(item.id(), lab().technician("Tal Emberley").id());
            version = cells.current(cell).number();
            assertThat(changes.begin(cell, item.id(), one.id())).isInstanceOf(Outcome.Going.class);
        }

        private SampleLab lab() {
            return new SampleLab(application);
        }

        private Person onDuty(Person person) {
            application
                    .getBean(DutyRegister.class)
                    .plan(person.id(), MovableClock.START, MovableClock.START.plus(Duration.ofHours(9)), null);
            return person;
        }

        private Outcome reads(Person person) {
            return changes.read(cell, code, OFFSET, person.id());
        }

        private String refused(Outcome outcome) {
            assertThat(outcome).isInstanceOf(Outcome.Refused.class);
            assertThat(cells.current(cell).number()).isEqualTo(version);
            return ((Outcome.Refused) outcome).says();
        }

        @Test
        void asksForStaffWhenTwoStudentsRead() {
            reads(lab().student("Noor Candlewick"));
            assertThat(refused(reads(lab().student("Mateo Ironbark")))).contains("is lab staff on duty");
            Person adaeze = onDuty(lab().technician("Adaeze Lanternby"));
            assertThat(reads(adaeze)).isEqualTo(new Outcome.Done(version + 1));
            assertThat(cells.current(cell).approvedBy()).isEqualTo(adaeze.id());
        }

        @Test
        void takesAStudentAsTheOtherOne() {
            Person adaeze = onDuty(lab().technician("Adaeze Lanternby"));
            Person noor = lab().student("Noor Candlewick");
            reads(adaeze);
            assertThat(reads(noor)).isEqualTo(new Outcome.Done(version + 1));
            assertThat(cells.current(cell).approvedBy()).as("staff vouch").isEqualTo(adaeze.id());
            assertThat(cells.current(cell).proposedBy()).isEqualTo(noor.id());
        }

        @Test
        void doesNotCountStaffOffDutyOrNotAuthorised() {
            reads(lab().technician("Adaeze Lanternby"));
            assertThat(refused(reads(lab().student("Noor Candlewick")))).contains("on duty and authorised");
            Person hemi = onDuty(lab().person("Hemi Coppergate", Role.TECHNICIAN));
            assertThat(refused(reads(hemi))).contains("on duty and authorised");
        }

        @Test
        void countsNoReadingThatWasMadeForAReturnToService() {
            Person noor = lab().student("Noor Candlewick");
            readings.read(new ToolReading(cell, noor.id(), clock.instant(), code, OFFSET));
            assertThat(changes.open(cell).orElseThrow().readers()).isEmpty();
            assertThat(reads(onDuty(lab().technician("Adaeze Lanternby")))).isInstanceOf(Outcome.Going.class);
        }

        @Test
        void refusesAnotherCodeThanThatOfTheTool() {
            changes.read(
                    cell,
                    "G-02",
                    OFFSET,
                    onDuty(lab().technician("Adaeze Lanternby")).id());
            assertThat(refused(reads(lab().student("Noor Candlewick"))))
                    .contains("do not agree")
                    .doesNotContain("G-02");
        }

        @Test
        void letsNobodyReadWhoIsNotAuthorisedAtTheCell() {
            assertThat(refused(reads(lab().person("Ottilie Marrow", Role.STUDENT))))
                    .contains("authorised at this cell");
            assertThat(changes.open(cell).orElseThrow().readers()).isEmpty();
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
