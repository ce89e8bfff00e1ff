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
import org.springframework.jdbc.core.simple.JdbcClient;
import org.standclear.booking.SampleLab;
import org.standclear.cell.Equipment.Item;
import org.standclear.cell.Equipment.Kind;
import org.standclear.cell.ToolChanges.Outcome;
import org.standclear.people.DutyRegister;
import org.standclear.people.Person;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.Id;
import org.standclear.platform.security.Role;
import org.standclear.platform.time.SqlTime;
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
        CellStates states;

        @Autowired
        DayTests dayTests;

        @Autowired
        JdbcClient jdbc;

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

        @Test
        void oneWhoMayNotReadNeitherBlocksAReturnNorCounts() {
            Person tal = lab().technician("Tal Emberley");
            states.tagOut(cell, tal.id(), "cable chafed at the elbow");
            dayTests.record(cell, tal.id(), SampleCell.goodReadings());
            Person ottilie = lab().person("Ottilie Marrow", Role.STUDENT);
            assertThat(readings.read(new ToolReading(cell, ottilie.id(), clock.instant(), "V-99", OFFSET)))
                    .hasValueSatisfying(says -> assertThat(says).contains("authorised at this cell"));
            assertThat(readings.sinceTagged(cell)).isEmpty();

            stored(ottilie, "V-99");
            stored(lab().person("Mateo Ironbark", Role.STUDENT), "G-02");
            stored(lab().person("Noor Candlewick", Role.STUDENT), "G-02");
            assertThat(states.returnToService(cell, tal.id(), "new cable"))
                    .isInstanceOfSatisfying(
                            CellStates.Return.Refused.class,
                            refused -> assertThat(refused.says()).endsWith("read so far: 0."));
            SampleCell.readByTwo(application, cell);

            assertThat(states.returnToService(cell, tal.id(), "new cable"))
                    .isEqualTo(new CellStates.Return.Returned(CellState.IN_SERVICE));
        }

        @Test
        void aReadingOfAStudentWhoIsAuthorisedCountsForAReturn() {
            Person noor = lab().student("Noor Candlewick");
            assertThat(readings.read(new ToolReading(cell, noor.id(), clock.instant(), code, OFFSET)))
                    .isEmpty();
            assertThat(readings.sinceTagged(cell)).extracting(ToolReading::by).containsExactly(noor.id());
        }

        /** A reading that was kept of somebody who may not read, as an authorisation that ended leaves it behind. */
        private void stored(Person person, String tool) {
            jdbc.sql("""
                    insert into cell_tool_readings (id, cell_id, read_by, read_at, tool_code, offset_x_mm, offset_y_mm,
                        offset_z_mm)
                    values (:id, :cell, :by, :at, :tool, 0, 0, -60)""")
                    .param("id", Id.newValue())
                    .param("cell", cell.value())
                    .param("by", person.id().value())
                    .param("at", SqlTime.toSql(clock.instant()))
                    .param("tool", tool)
                    .update();
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
