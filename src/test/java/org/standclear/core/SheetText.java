package org.standclear.core;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import org.standclear.core.cell.CellDescription;
import org.standclear.core.check.CheckAnswer;
import org.standclear.core.check.CheckRequest;
import org.standclear.core.check.ProgramCheck;
import org.standclear.core.check.ProgramFile;
import org.standclear.core.text.Reading;

/** The text of a motion sheet that tests change in one place. */
public record SheetText(String text) {

    private static final String SCARA = """
            motion-sheet: 1
            title: Peg and plate
            declare:
              power: reduced
              override-percent: 50
              max-tool-speed-mm-s: 200
              tool: G-02
              part-kg: 0.06
            points:
              home: {x: 0, y: 300, z: 80, yaw: 0, elbow: right}
              tray-above: {x: -120, y: 200, z: 80, yaw: 0, elbow: right}
              tray: {x: -120, y: 200, z: 20, yaw: 0, elbow: right}
            start: home
            steps:
              - move: tray-above
                speed-percent: 20
                acceleration-percent: 50
              - straight: tray
                speed-mm-s: 80
              - wait-s: 0.5
              - do: grip
            """;

    /** A sheet that the scara of {@link CellText} answers with "within limits". */
    public static SheetText scara() {
        return new SheetText(SCARA);
    }

    /** The same declaration with other points and steps, and no start. */
    public static SheetText of(String points, String... steps) {
        String head = SCARA.substring(0, SCARA.indexOf("points:"));
        StringBuilder text = new StringBuilder(head).append("points:\n");
        points.lines().forEach(line -> text.append("  ").append(line).append('\n'));
        text.append("steps:\n");
        Arrays.stream(steps).forEach(step -> text.append("  - ").append(step).append('\n'));
        return new SheetText(text.toString());
    }

    /** The same with a start. */
    public SheetText startingAt(String point) {
        return with("steps:", "start: " + point + "\nsteps:");
    }

    /** The same with one passage changed; the passage must be there. */
    public SheetText with(String passage, String instead) {
        if (!text.contains(passage)) {
            throw new IllegalArgumentException("the sheet has no passage " + passage);
        }
        return new SheetText(text.replace(passage, instead));
    }

    /** The same without the line that holds the words. */
    public SheetText without(String words) {
        String line =
                text.lines().filter(one -> one.contains(words)).findFirst().orElseThrow();
        return new SheetText(text.replace(line + "\n", ""));
    }

    /** As a file. */
    public ProgramFile file() {
        return ProgramFile.of(text.getBytes(StandardCharsets.UTF_8)).value();
    }

    /** What came of checking it on a cell. */
    public Reading<CheckAnswer> read(CellText cell) {
        return ProgramCheck.check(CheckRequest.of(cell.cell(), file()));
    }

    /** The answer on a cell. */
    public CheckAnswer checkedOn(CellText cell) {
        return read(cell).value();
    }

    /** The answer on a cell. */
    public CheckAnswer checkedOn(CellDescription cell) {
        return ProgramCheck.check(CheckRequest.of(cell, file())).value();
    }
}
