package org.standclear.cell;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Clock;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.context.ApplicationContext;
import org.standclear.booking.SampleLab;
import org.standclear.cell.CellRegister.Decided;
import org.standclear.cell.CellRegister.NewProposal;
import org.standclear.cell.CellRegister.Proposed;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.security.Role;

/** Cell files and cells for tests of any feature; names are new each time, since tests share a database. */
public final class SampleCell {

    private SampleCell() {}

    /** A name that no other test has used. */
    public static String name() {
        return "Avocet " + UUID.randomUUID().toString().substring(0, 8);
    }

    /** A cell file of a scara cell with the demo's limits. */
    public static String file(String name, int version) {
        return """
                cell-file: 1
                name: %s
                version: %d
                arm:
                  kind: scara
                  links-mm: [225, 175]
                  axes:
                    - {name: shoulder, min: -40, max: 220, speed: 450, acceleration: 1800}
                    - {name: elbow, min: -140, max: 140, speed: 600, acceleration: 2400}
                    - {name: lift, min: 0, max: 150, speed: 700, acceleration: 5000}
                    - {name: wrist, min: -360, max: 360, speed: 1200, acceleration: 9000}
                  straight: {speed: 1000, acceleration: 4000}
                  moving-mass-kg: 6.0
                  rated-payload-kg: 3.0
                  reduced-power-speed-mm-s: 250
                  stop: {reaction-s: 0.10, stopping-s: 0.30}
                tools:
                  - {code: G-02, mass-kg: 0.42, offset-mm: [0, 0, -60], overhang-mm: 25, edges: false}
                  - {code: V-01, mass-kg: 0.18, offset-mm: [0, 0, -60], overhang-mm: 15, edges: false}
                fitted-tool: G-02
                limits:
                  power: reduced
                  tool-speed-mm-s: 250
                  moving-part-speed-mm-s: 250
                  moving-part-rule: advised
                  override-percent: 50
                  payload-kg: 1.0
                  space: {x: [-250, 250], y: [120, 380], z: [5, 150]}
                  keep-out:
                    - {name: camera post, x: [180, 220], y: [300, 340], z: [0, 400]}
                  contact: {regions: [hand-and-fingers, lower-arm-and-wrist], rule: advised}
                  stand-line-mm: 1800
                  separation: {rule: advised, human-speed-mm-s: 1600, intrusion-mm: 200, person-uncertainty-mm: 100, robot-uncertainty-mm: 50}
                """.formatted(name, version);
    }

    /** A new cell with its first version in force. */
    public static CellId inForce(CellRegister register, String name) {
        Decided decided = register.approve(proposed(register, null, file(name, 7)), PersonId.next(), 0);
        return ((Decided.Done) decided).cell();
    }

    /** A proposal by a person nobody else is. */
    public static UUID proposed(CellRegister register, @Nullable CellId cell, String file) {
        Proposed proposed =
                register.propose(new NewProposal(cell, file, "measured again after the move", PersonId.next(), 7));
        if (proposed instanceof Proposed.Kept kept) {
            return kept.proposal().id();
        }
        throw new AssertionError(proposed.toString());
    }

    /** The readings of a day test that passes. */
    public static DayTestReadings goodReadings() {
        return new DayTestReadings("pillar by the door", true, false, true, "reduced", "level 3", 50, "G-02", true);
    }

    /** Two technicians read tool and offset now, both as they are. */
    public static void readByTwo(ApplicationContext application, CellId cell) {
        Instant now = application.getBean(Clock.class).instant();
        SampleLab lab = new SampleLab(application);
        for (String name : List.of("Wren Saltmarsh", "Tal Emberley")) {
            PersonId reader = lab.person(name, Role.TECHNICIAN).id();
            assertThat(application
                            .getBean(ToolReadings.class)
                            .read(new ToolReading(cell, reader, now, "G-02", List.of(0.0, 0.0, -60.0))))
                    .isEmpty();
        }
    }
}
