package org.standclear.core;

import org.standclear.core.cell.CellDescription;
import org.standclear.core.cell.CellFileReader;

/** The text of a cell file that tests change in one place. */
public record CellText(String text) {

    private static final String LIMITS = """
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
            """;

    private static final String SCARA = """
            cell-file: 1
            name: Avocet
            version: 7
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
            fitted-tool: G-02
            """ + LIMITS;

    private static final String GANTRY = """
            cell-file: 1
            name: Dunlin
            version: 3
            arm:
              kind: gantry
              axes:
                - {name: x, min: 0, max: 600, speed: 500, acceleration: 2500}
                - {name: y, min: 0, max: 400, speed: 500, acceleration: 2500}
                - {name: z, min: -50, max: 200, speed: 300, acceleration: 2000}
                - {name: yaw, min: -360, max: 360, speed: 360, acceleration: 1800}
              straight: {speed: 400, acceleration: 2000}
              moving-mass-kg: 14.0
              rated-payload-kg: 5.0
              reduced-power-speed-mm-s: 250
              stop: {reaction-s: 0.10, stopping-s: 0.30}
            tools:
              - {code: V-02, mass-kg: 0.18, offset-mm: [0, 0, -40], overhang-mm: 25, edges: false}
            fitted-tool: V-02
            """
            + LIMITS.replace("x: [-250, 250], y: [120, 380], z: [5, 150]", "x: [0, 600], y: [0, 400], z: [0, 150]")
                    .replace("stand-line-mm: 1800", "stand-line-mm: 2100");

    /** The same with parts listed. */
    public CellText listing(String... parts) {
        StringBuilder list = new StringBuilder("parts:\n");
        for (String part : parts) {
            list.append("  - ").append(part).append('\n');
        }
        return with("limits:\n", list + "limits:\n");
    }

    /** A scara of the invented college. */
    public static CellText scara() {
        return new CellText(SCARA);
    }

    /** A gantry of the invented college. */
    public static CellText gantry() {
        return new CellText(GANTRY);
    }

    /** The same with one passage changed; the passage must be there. */
    public CellText with(String passage, String instead) {
        if (!text.contains(passage)) {
            throw new IllegalArgumentException("the cell file has no passage " + passage);
        }
        return new CellText(text.replace(passage, instead));
    }

    /** The same without the line that holds the words. */
    public CellText without(String words) {
        String line =
                text.lines().filter(one -> one.contains(words)).findFirst().orElseThrow();
        return new CellText(text.replace(line + "\n", ""));
    }

    /** What it describes. */
    public CellDescription cell() {
        return CellFileReader.read(text).value();
    }
}
