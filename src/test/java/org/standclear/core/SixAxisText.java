package org.standclear.core;

/** A cell with a six-axis arm of the invented college, and a sheet for it. */
public final class SixAxisText {

    private static final String LINKS = """
              kind: articulated
              links:
                - {a-mm: 50, alpha-deg: -90, d-mm: 330}
                - {a-mm: 330, alpha-deg: 0, d-mm: 0, theta-deg: -90}
                - {a-mm: 35, alpha-deg: -90, d-mm: 0}
                - {a-mm: 0, alpha-deg: 90, d-mm: 335}
                - {a-mm: 0, alpha-deg: -90, d-mm: 0}
                - {a-mm: 0, alpha-deg: 0, d-mm: 80}
              axes:
                - {name: waist, min: -170, max: 170, speed: 300, acceleration: 1200}
                - {name: shoulder, min: -100, max: 140, speed: 250, acceleration: 1000}
                - {name: elbow, min: -190, max: 70, speed: 300, acceleration: 1200}
                - {name: forearm, min: -190, max: 190, speed: 400, acceleration: 2000}
                - {name: wrist, min: -120, max: 120, speed: 400, acceleration: 2000}
                - {name: flange, min: -360, max: 360, speed: 600, acceleration: 3000}
            """;

    private SixAxisText() {}

    /** The cell; its tool stands straight out from the flange. */
    public static CellText cell() {
        String scara = CellText.scara().text();
        String kind = scara.substring(scara.indexOf("  kind: scara"), scara.indexOf("  straight:"));
        return CellText.scara()
                .with(kind, LINKS)
                .with("name: Avocet", "name: Fulmar")
                .with("offset-mm: [0, 0, -60]", "offset-mm: [0, 0, 60]")
                .with(
                        "space: {x: [-250, 250], y: [120, 380], z: [5, 150]}",
                        "space: {x: [-600, 600], y: [-600, 600], z: [5, 900]}");
    }

    /** A sheet with points as axis values and as poses that the cell answers with "within limits". */
    public static SheetText sheet() {
        return SheetText.of("""
                home: {axes: [0, 0, 0, 0, 60, 0]}
                above: {x: 400, y: -100, z: 300, roll: 180, pitch: 0, yaw: 0, shoulder: front, elbow: up, wrist: plain}
                there: {x: 400, y: -100, z: 220, roll: 180, pitch: 0, yaw: 30, shoulder: front, elbow: up, wrist: plain}
                """, """
                {move: above, speed-percent: 10}""", """
                {straight: there, speed-mm-s: 80}""", """
                {straight: above, speed-mm-s: 80}""", """
                {move: home, speed-percent: 10}""").startingAt("home");
    }
}
