package org.standclear.signoff;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.standclear.booking.BookingState;
import org.standclear.cell.CellRegister;
import org.standclear.cell.CellRegister.Decided;
import org.standclear.cell.CellRegister.Proposed;
import org.standclear.cell.Cells;
import org.standclear.cell.Equipment;
import org.standclear.cell.Equipment.Item;
import org.standclear.cell.Equipment.Kind;
import org.standclear.cell.PartChanges;
import org.standclear.cell.PartChanges.Approved;
import org.standclear.cell.PartChanges.Footprint;
import org.standclear.cell.ToolChanges;
import org.standclear.cell.VersionEffects;
import org.standclear.cell.VersionEffects.Effect;
import org.standclear.platform.ids.Id;
import org.standclear.testing.OnH2;
import org.standclear.testing.OnPostgres;

/** Another tool, part or fixture makes the cell's next version; programs are checked anew by themselves and listed. */
class EquipmentRecheckIT {

    abstract static class Cases extends BenchCases {

        /** Between tray and plate, where the sample program passes 80 mm above the table. */
        private static final Footprint MIDDLE = new Footprint(-40, 20, 120, 380);

        @Autowired
        Rechecks rechecks;

        @Autowired
        VersionEffects effects;

        @Autowired
        CellRegister register;

        @Autowired
        Cells cells;

        @Autowired
        Equipment equipment;

        @Autowired
        ToolChanges toolChanges;

        @Autowired
        PartChanges parts;

        private void runAll() {
            while (rechecks.runPending(20) > 0) {
                // until nothing more can be brought up to date
            }
        }

        private static String code(String letter) {
            return letter + "-" + UUID.randomUUID().toString().substring(0, 6);
        }

        private Item registered(Kind kind, String code, double mass, List<Double> offset, @Nullable Double reach) {
            Item item = new Item(
                    Id.newValue(),
                    kind,
                    code,
                    "sample",
                    mass,
                    offset,
                    reach,
                    false,
                    scene().adaeze.id(),
                    clock.instant(),
                    null);
            is(Equipment.Kept.Registered.class, equipment.register(item));
            return item;
        }

        private Approved.Done approved(Item item) {
            return is(Approved.Done.class, parts.approve(item.id(), scene().hemi.id()));
        }

        private int version() {
            return cells.current(scene().cell).number();
        }

        private String file() {
            return cells.current(scene().cell).file();
        }

        private void approve(Proposed proposed) {
            is(
                    Decided.Done.class,
                    register.approve(
                            is(Proposed.Kept.class, proposed).proposal().id(),
                            scene().hemi.id(),
                            version()));
        }

        private Effect effect() {
            assertThat(effects.of(scene().cell)).hasSize(1);
            return effects.of(scene().cell).get(0);
        }

        @Test
        void listsTheBookingsOfAToolChange() {
            scene().attached();
            assertThat(scene().state()).isEqualTo(BookingState.CHECKED);
            List<Double> offset = List.of(0.0, 0.0, -85.0);
            Item tool = registered(Kind.TOOL, code("S"), 0.55, offset, 30.0);
            approved(tool);
            is(
                    ToolChanges.Outcome.Going.class,
                    toolChanges.begin(scene().cell, tool.id(), scene().adaeze.id()));
            toolChanges.read(scene().cell, tool.code(), offset, scene().adaeze.id());
            is(
                    ToolChanges.Outcome.Done.class,
                    toolChanges.read(
                            scene().cell, tool.code(), offset, scene().hemi.id()));
            assertThat(effect().after()).isEqualTo("the re-check waits");
            runAll();
            assertThat(effect().before()).isEqualTo("within limits on version 1");
            assertThat(effect().after()).isEqualTo("outside limits on version 2");
            assertThat(effect().changed()).isTrue();
            assertThat(scene().state()).as("declared for another tool").isEqualTo(BookingState.BOOKED);
        }

        @Test
        void listsTheBookingsOfAFixtureAndFollowsItsHeight() {
            scene().attached();
            String code = code("F");
            Item fixture = registered(Kind.FIXTURE, code, 1.9, List.of(), 60.0);
            approved(fixture);
            approve(parts.put(scene().cell, fixture.id(), MIDDLE, scene().adaeze.id()));
            assertThat(version()).isEqualTo(2);
            assertThat(parts.at(scene().cell)).containsExactly(code);
            assertThat(file()).contains("name: fixture " + code, "z: [0, 60]", "camera post");
            runAll();
            assertThat(effect().after()).isEqualTo("outside limits on version 2");
            assertThat(scene().state()).isEqualTo(BookingState.BOOKED);

            clock.moveBy(Duration.ofSeconds(5));
            Item lower = registered(Kind.FIXTURE, code, 1.9, List.of(), 1.0);
            assertThat(approved(lower).followed()).singleElement().asString().contains("is at version 3 now");
            assertThat(file()).contains("z: [0, 1]").doesNotContain("z: [0, 60]");
            assertThat(cells.current(scene().cell).proposedBy())
                    .isEqualTo(scene().adaeze.id());
            assertThat(cells.current(scene().cell).approvedBy())
                    .isEqualTo(scene().hemi.id());
            runAll();
            assertThat(effect().before()).isEqualTo("outside limits on version 2");
            assertThat(effect().after()).startsWith("within limits on version 3");

            approve(parts.takeAway(scene().cell, lower.id(), scene().adaeze.id()));
            assertThat(parts.at(scene().cell)).isEmpty();
            assertThat(file()).contains("camera post");
        }

        @Test
        void widensTheOverhangToThePartAndFollowsItsMass() {
            scene().attached();
            String code = code("P");
            Item part = registered(Kind.PART, code, 0.06, List.of(), 40.0);
            approved(part);
            approve(parts.put(scene().cell, part.id(), null, scene().adaeze.id()));
            assertThat(file()).contains("# part " + code + ": 0.06 kg, reaches 40 mm");
            assertThat(file()).contains("parts:\n  - {name: " + code + ", mass-kg: 0.06}\n");
            assertThat(file()).contains("code: G-02, mass-kg: 0.42, offset-mm: [0, 0, -60], overhang-mm: 40");
            runAll();
            assertThat(effect().after()).endsWith("on version 2");

            clock.moveBy(Duration.ofSeconds(5));
            assertThat(approved(registered(Kind.PART, code, 0.08, List.of(), 40.0))
                            .followed())
                    .hasSize(1);
            assertThat(version()).isEqualTo(3);
            runAll();
            assertThat(effect().before()).endsWith("on version 2");
            assertThat(effect().after()).endsWith("on version 3");

            clock.moveBy(Duration.ofSeconds(5));
            assertThat(approved(registered(Kind.PART, code, 0.08, List.of(), 40.0))
                            .followed())
                    .as("nothing is otherwise")
                    .isEmpty();
            assertThat(version()).isEqualTo(3);

            Item now = equipment.all().stream()
                    .filter(one -> one.code().equals(code))
                    .findFirst()
                    .orElseThrow();
            approve(parts.takeAway(scene().cell, now.id(), scene().adaeze.id()));
            assertThat(file())
                    .as("the tool alone")
                    .contains("overhang-mm: 25", "overhang-mm: 15")
                    .doesNotContain("# ", "parts:");
        }

        @Test
        void beginsAToolChangeWhereACorrectedToolIsFitted() {
            List<Double> offset = List.of(0.0, 0.0, -85.0);
            String code = code("S");
            Item tool = registered(Kind.TOOL, code, 0.55, offset, 30.0);
            approved(tool);
            toolChanges.begin(scene().cell, tool.id(), scene().adaeze.id());
            toolChanges.read(scene().cell, code, offset, scene().adaeze.id());
            toolChanges.read(scene().cell, code, offset, scene().hemi.id());
            Item corrected = registered(Kind.TOOL, code, 0.55, List.of(0.0, 0.0, -84.0), 30.0);
            assertThat(approved(corrected).followed())
                    .singleElement()
                    .asString()
                    .contains("a tool change is begun");
            assertThat(toolChanges.open(scene().cell).orElseThrow().tool().id()).isEqualTo(corrected.id());
            assertThat(cells.obstacles(scene().cell, clock.instant()))
                    .extracting(Cells.Obstacle::code)
                    .contains("tool-change-open");
        }

        @Test
        void refusesWhatNobodyApprovedOrMeasuredAndAFixtureWithoutItsPlace() {
            Item waiting = registered(Kind.PART, code("P"), 0.06, List.of(), 20.0);
            Item unmeasured = registered(Kind.PART, code("P"), 0.06, List.of(), null);
            Item fixture = registered(Kind.FIXTURE, code("F"), 1.9, List.of(), 30.0);
            approved(unmeasured);
            approved(fixture);
            assertThat(refused(waiting, null)).contains("second person has approved");
            assertThat(refused(unmeasured, null)).contains("Nobody has measured");
            assertThat(refused(fixture, null)).contains("where the fixture stands");
            assertThat(refused(fixture, new Footprint(10, 10, 0, 5))).contains("where the fixture stands");
            assertThat(version()).isEqualTo(1);
        }

        private String refused(Item item, @Nullable Footprint where) {
            return is(
                            Proposed.Refused.class,
                            parts.put(
                                    scene().cell,
                                    item.id(),
                                    where,
                                    scene().adaeze.id()))
                    .says();
        }
    }

    @Nested
    @OnH2
    class OnH2Engine extends Cases {}

    @Nested
    @OnPostgres
    class OnPostgresEngine extends Cases {}
}
