package org.standclear.program;

import java.nio.charset.StandardCharsets;

/** Motion sheets for tests of any feature. */
public final class SampleProgram {

    private SampleProgram() {}

    /** A sheet within the limits of the sample cell. */
    public static String sheet(String title) {
        return """
                motion-sheet: 1
                title: "%s"
                declare:
                  power: reduced
                  override-percent: 50
                  max-tool-speed-mm-s: 200
                  tool: G-02
                  part-kg: 0.06
                  loop: 5
                points:
                  tray-above: {x: -120, y: 200, z: 80, yaw: 0, elbow: right}
                  tray: {x: -120, y: 200, z: 20, yaw: 0, elbow: right}
                  plate-above: {x: 100, y: 250, z: 80, yaw: 90, elbow: right}
                  plate: {x: 100, y: 250, z: 22, yaw: 90, elbow: right}
                start: tray-above
                steps:
                  - move: tray-above
                    speed-percent: 10
                    acceleration-percent: 50
                  - straight: tray
                    speed-mm-s: 80
                    acceleration-percent: 50
                  - wait-s: 0.5
                  - do: grip
                  - straight: tray-above
                    speed-mm-s: 120
                  - move: plate-above
                    speed-percent: 20
                  - straight: plate
                    speed-mm-s: 60
                  - do: open
                  - straight: plate-above
                    speed-mm-s: 120
                """.formatted(title);
    }

    /** Blocks within the limits of the sample cell, but for one that the reader does not know. */
    public static String blocksWithUnreadLine() {
        return """
                ; declaration
                ; power: reduced
                ; override-percent: 50
                ; max-tool-speed-mm-s: 200
                ; tool: G-02
                ; part-kg: 0.06
                ; loop: 5
                ; end declaration
                (posture elbow right)
                G17 G21 G90
                N10 G1 X-120 Y220 Z80 F3000
                N20 S900 M3
                N30 G1 Z60 F3000
                M30
                """;
    }

    /** The bytes of a sheet. */
    public static byte[] bytes() {
        return bytes("Peg and plate");
    }

    /** The bytes of a sheet with that title. */
    public static byte[] bytes(String title) {
        return sheet(title).getBytes(StandardCharsets.UTF_8);
    }
}
