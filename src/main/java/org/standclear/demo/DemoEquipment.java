package org.standclear.demo;

import java.time.Clock;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.springframework.context.annotation.Profile;
import org.springframework.stereotype.Component;
import org.standclear.cell.Equipment;
import org.standclear.cell.Equipment.Item;
import org.standclear.cell.Equipment.Kept;
import org.standclear.cell.Equipment.Kind;
import org.standclear.platform.ids.Id;
import org.standclear.platform.time.SqlTime;

/** Tools, parts and fixtures of the demo's register; the tools are those of the cell files, and one that waits. */
@Component
@Profile("demo")
class DemoEquipment {

    private final Equipment equipment;
    private final Clock clock;

    DemoEquipment(Equipment equipment, Clock clock) {
        this.equipment = equipment;
        this.clock = clock;
    }

    void register(Roster roster) {
        approved(tool("G-02", "two-finger gripper", 0.42, -60, 25, false, roster), roster);
        approved(tool("V-01", "vacuum cup", 0.18, -60, 15, false, roster), roster);
        approved(tool("S-03", "screw-bit holder", 0.55, -85, 30, true, roster), roster);
        approved(plain(Kind.PART, "P-11", "peg, aluminium", 0.06, 20, roster), roster);
        approved(plain(Kind.FIXTURE, "F-04", "plate with nine holes", 1.9, 30, roster), roster);
        keep(tool("G-05", "three-finger gripper, new", 0.61, -72, 40, false, roster));
    }

    private Item tool(
            String code, String name, double massKg, double z, double overhang, boolean edges, Roster roster) {
        return item(Kind.TOOL, code, name, massKg, List.of(0.0, 0.0, z), overhang, edges, roster);
    }

    private Item plain(Kind kind, String code, String name, double massKg, double reach, Roster roster) {
        return item(kind, code, name, massKg, List.of(), reach, false, roster);
    }

    private Item item(
            Kind kind,
            String code,
            String name,
            double massKg,
            List<Double> offset,
            @Nullable Double overhang,
            boolean edges,
            Roster roster) {
        return new Item(
                Id.newValue(),
                kind,
                code,
                name,
                massKg,
                offset,
                overhang,
                edges,
                roster.person("adaeze"),
                SqlTime.stored(clock.instant()),
                null);
    }

    private void keep(Item item) {
        Expect.that(Kept.Registered.class, equipment.register(item), "registering " + item.code());
    }

    private void approved(Item item, Roster roster) {
        keep(item);
        Expect.that(
                Kept.Registered.class, equipment.approve(item.id(), roster.person("ines")), "approving " + item.code());
    }
}
