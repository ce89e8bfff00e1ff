package org.standclear.benchmark;

import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.Random;
import org.standclear.core.CellText;
import org.standclear.core.cell.CellDescription;
import org.standclear.core.check.CheckAnswer;
import org.standclear.core.check.CheckRequest;
import org.standclear.core.check.ProgramCheck;
import org.standclear.core.check.ProgramFile;

/** Motion sheets of any length for measuring: pick and place between random points inside the space of a scara cell. */
final class Sheets {

    private static final long SEED = 20261127L;
    private static final int POINTS = 60;

    private Sheets() {}

    static CellDescription cell() {
        return CellText.scara().cell();
    }

    static String text(int steps) {
        Random random = new Random(SEED);
        StringBuilder text = new StringBuilder("""
                motion-sheet: 1
                title: Long run
                declare: {power: reduced, override-percent: 50, max-tool-speed-mm-s: 200, tool: G-02, part-kg: 0.06}
                points:
                  home: {x: 0, y: 300, z: 80, yaw: 0, elbow: right}
                """);
        for (int i = 0; i < POINTS; i++) {
            double angle = Math.toRadians(50 + 80 * random.nextDouble());
            double radius = 220 + 130 * random.nextDouble();
            text.append(String.format(
                    Locale.ROOT,
                    "  p%d: {x: %.3f, y: %.3f, z: %.3f, yaw: %.3f, elbow: right}%n",
                    i,
                    radius * Math.cos(angle),
                    radius * Math.sin(angle),
                    10 + 100 * random.nextDouble(),
                    180 * random.nextDouble() - 90));
        }
        text.append("start: home\nsteps:\n");
        for (int i = 0; i < steps; i++) {
            String point = "p" + random.nextInt(POINTS);
            text.append(
                    switch (i % 8) {
                        case 6 -> "  - wait-s: 0.25\n";
                        case 7 -> "  - do: grip\n";
                        case 1, 3, 5 -> "  - {straight: " + point + ", speed-mm-s: 90}\n";
                        default -> "  - {move: " + point + ", speed-percent: 20, acceleration-percent: 60}\n";
                    });
        }
        return text.toString();
    }

    static ProgramFile file(int steps) {
        return ProgramFile.of(text(steps).getBytes(StandardCharsets.UTF_8)).value();
    }

    static CheckAnswer answer(CellDescription cell, ProgramFile file) {
        return ProgramCheck.check(CheckRequest.of(cell, file)).value();
    }
}
