package org.standclear.core.difference;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.standclear.core.SheetText;
import org.standclear.core.program.Declaration;
import org.standclear.core.program.MotionSheetReader;
import org.standclear.core.program.blocks.BlockReader;
import org.standclear.core.program.phrases.Phrasebook;
import org.standclear.core.program.phrases.PhrasebookReader;

class ProgramDifferenceTests {

    private static final SheetText SHEET = SheetText.scara();

    private static ReadProgram read(SheetText sheet) {
        return ReadProgram.of(new MotionSheetReader().read(sheet.file().text()).value(), null);
    }

    private static List<String> words(SheetText before, SheetText after) {
        return ProgramDifference.between(read(before), read(after)).stream()
                .map(Change::words)
                .toList();
    }

    @Test
    void sameMeansNothingChanged() {
        assertThat(words(SHEET, SHEET)).isEmpty();
        assertThat(words(SHEET, SHEET.with("steps:", "# a remark\n\nsteps:"))).isEmpty();
    }

    @Test
    void aPointMovedUpAndDown() {
        SheetText higher = SHEET.with("y: 200, z: 20", "y: 200, z: 32");

        assertThat(words(SHEET, higher)).containsExactly("point tray moved 12 mm up");
        assertThat(words(higher, SHEET)).containsExactly("point tray moved 12 mm down");
    }

    @Test
    void aPointMovedAcrossSaysHowMuchNearerItIs() {
        // 300-400-500: from 300 mm straight ahead to 500 mm away
        SheetText away = SHEET.with("x: 0, y: 300, z: 80", "x: 300, y: 400, z: 80");

        assertThat(words(SHEET, away))
                .containsExactly("point home moved 300 mm along +x and 100 mm along +y, 200 mm farther from axis 1");
        assertThat(words(away, SHEET))
                .containsExactly("point home moved 300 mm along -x and 100 mm along -y, 200 mm nearer to axis 1");
    }

    @Test
    void aPointTurnedOrOnTheOtherSide() {
        SheetText turned = SHEET.with("z: 20, yaw: 0, elbow: right", "z: 20, yaw: 350, elbow: left");

        assertThat(words(SHEET, turned))
                .containsExactly(
                        "point tray turned 10 deg clockwise seen from above, the elbow on the left instead of the elbow on the right");
        assertThat(words(turned, SHEET))
                .containsExactly(
                        "point tray turned 10 deg counter-clockwise seen from above, the elbow on the right instead of the elbow on the left");
    }

    @Test
    void aSpeedChanged() {
        SheetText faster = SHEET.with("speed-mm-s: 80", "speed-mm-s: 120");

        assertThat(words(SHEET, faster)).containsExactly("step 2 speed 80 to 120 mm/s");
        assertThat(words(faster, SHEET)).containsExactly("step 2 speed 120 to 80 mm/s");
        assertThat(words(SHEET, SHEET.with("speed-percent: 20", "speed-percent: 35")))
                .containsExactly("step 1 speed 20 to 35 %");
        assertThat(words(SHEET, SHEET.with("wait-s: 0.5", "wait-s: 2"))).containsExactly("step 3 wait 0.5 to 2 s");
        assertThat(words(SHEET, SHEET.with("do: grip", "do: release")))
                .containsExactly("step 4 does release, before grip");
    }

    @Test
    void aStepInsertedDoesNotChangeTheOnesAfterIt() {
        SheetText longer = SHEET.with("  - wait-s: 0.5", "  - move: home\n  - wait-s: 0.5");

        assertThat(words(SHEET, longer)).containsExactly("step 3 inserted: joint move to home at 100 %");
        assertThat(words(longer, SHEET)).containsExactly("the former step 3 removed: joint move to home at 100 %");
    }

    @Test
    void aStepThatChangedBehindAnInsertedOneSaysItsFormerNumber() {
        SheetText both = SHEET.with(
                "  - straight: tray\n    speed-mm-s: 80", "  - do: blow\n  - straight: tray\n    speed-mm-s: 90");

        assertThat(words(SHEET, both))
                .containsExactly("step 2 inserted: action blow", "step 3 (formerly 2) speed 80 to 90 mm/s");
    }

    @Test
    void anotherKindOrAnotherTarget() {
        SheetText joint = SHEET.with("straight: tray\n    speed-mm-s: 80", "move: tray");

        assertThat(words(SHEET, joint))
                .containsExactly("step 2 is a joint move to tray at 100 %, before a straight move to tray at 80 mm/s");
        assertThat(words(SHEET, SHEET.with("straight: tray\n", "straight: home\n")))
                .containsExactly("step 2 goes to home, before to tray");
    }

    @Test
    void pointsComeGoAndAreRenamed() {
        SheetText more = SHEET.with("start:", "  plate: {x: 100, y: 250, z: 20, yaw: 0, elbow: right}\nstart:");
        SheetText renamed = SHEET.with("  tray:", "  nest:").with("straight: tray\n", "straight: nest\n");

        assertThat(words(SHEET, more)).containsExactly("point plate added at x 100, y 250, z 20 mm");
        assertThat(words(more, SHEET)).containsExactly("point plate removed, it was at x 100, y 250, z 20 mm");
        assertThat(words(SHEET, renamed)).containsExactly("point tray is now called nest");
    }

    @Test
    void whatIsDeclared() {
        SheetText slower =
                SHEET.with("override-percent: 50", "override-percent: 40").without("part-kg");

        assertThat(words(SHEET, slower))
                .containsExactly(
                        "declared override-percent 50 % to 40 %", "no longer declares part-kg, before 0.06 kg");
        assertThat(words(slower, SHEET))
                .containsExactly("declared override-percent 40 % to 50 %", "declares part-kg 0.06 kg");
    }

    @Test
    void whatStandsBesideTheFileCountsToo() {
        ReadProgram bare = read(SHEET.without("part-kg"));
        Declaration beside = new Declaration(null, null, null, null, null, 0.1, null, null);

        assertThat(ProgramDifference.between(bare, ReadProgram.of(bare.plan(), beside)))
                .extracting(Change::words)
                .containsExactly("declares part-kg 0.1 kg");
    }

    private static ReadProgram blocks(String... lines) {
        return ReadProgram.of(new BlockReader().read(String.join("\n", lines)).value(), null);
    }

    private static List<String> words(ReadProgram before, ReadProgram after) {
        return ProgramDifference.between(before, after).stream()
                .map(Change::words)
                .toList();
    }

    @Test
    void placesWithoutNamesAreComparedWhereTheyAreUsed() {
        ReadProgram first = blocks("G1 X0 Y300 Z80 F3000", "G1 Z20 F3000");

        assertThat(words(first, blocks("(home)", "G1 X0 Y300 Z80 F3000", "G1 Z20 F3000")))
                .isEmpty();
        assertThat(words(first, blocks("G1 X0 Y300 Z80 F3000", "G1 Z32 F3000")))
                .containsExactly("step 2 end moved 12 mm up");
        // 3000 mm/min are 50 mm/s
        assertThat(words(first, blocks("G1 X0 Y300 Z80 F3000", "G4 P500", "G1 Z20 F3000")))
                .containsExactly("step 2 inserted: wait of 0.5 s");
        assertThat(words(first, blocks("G1 X0 Y300 Z80 F3000", "G1 Z20 F3000", "G1 X10 F3000")))
                .containsExactly("step 3 inserted: straight move to x 10, y 300, z 20 mm at 50 mm/s");
    }

    @Test
    void anArcThatGoesTheOtherWayRoundOrFasterSaysSo() {
        ReadProgram round = blocks("G1 X-100 Y300 Z80 F3000", "G2 X100 I100 J0 F3000");

        assertThat(words(round, blocks("G1 X-100 Y300 Z80 F3000", "G3 X100 I100 J0 F3000")))
                .containsExactly("step 2 goes round x 0, y 300 counter-clockwise, before round x 0, y 300 clockwise");
        assertThat(words(round, blocks("G1 X-100 Y300 Z80 F3000", "G2 X100 I100 J0 F6000")))
                .containsExactly("step 2 speed 50 to 100 mm/s");
    }

    @Test
    void whatTheFileStatesBesideItsDeclaration() throws Exception {
        Phrasebook book = Phrasebook.read(Files.readString(Path.of("seed-data/phrasebooks/plain-words.yaml")))
                .value();
        String program = Files.readString(Path.of("seed-data/programs/plain-words/peg-and-plate.txt"));
        String gentle = "run with gentle power";
        assertThat(program).contains(gentle);
        ReadProgram before = spoken(book, program);
        ReadProgram after = spoken(book, program.replace(gentle, "run with whole power"));

        assertThat(words(before, after))
                .anySatisfy(one -> assertThat(one).matches("states power full on line \\d+, which it did not before"))
                .anySatisfy(one -> assertThat(one).isEqualTo("no longer states power reduced"));
    }

    private static ReadProgram spoken(Phrasebook book, String program) {
        return ReadProgram.of(new PhrasebookReader(book).read(program).value(), null);
    }

    /** The alignment is checked by applying it: the kept and inserted steps must give the later program. */
    @Test
    void asManyStepsAreInsertedAndRemovedAsTheLengthsDiffer() {
        Random chance = new Random(20261127);
        for (int round = 0; round < 200; round++) {
            String[] before = steps(chance);
            String[] after = steps(chance);
            List<Change> changes = ProgramDifference.between(read(sheet(before)), read(sheet(after)));
            long in = changes.stream()
                    .filter(Change.StepInserted.class::isInstance)
                    .count();
            long out = changes.stream()
                    .filter(Change.StepRemoved.class::isInstance)
                    .count();
            assertThat(in - out).isEqualTo(after.length - before.length);
        }
    }

    private static String[] steps(Random chance) {
        String[] kinds = {"{move: a}", "{move: b}", "{straight: a, speed-mm-s: 50}", "{wait-s: 1}", "{do: grip}"};
        return chance.ints(chance.nextInt(1, 12), 0, kinds.length)
                .mapToObj(kind -> kinds[kind])
                .toArray(String[]::new);
    }

    private static SheetText sheet(String... steps) {
        return SheetText.of(
                "a: {x: 0, y: 300, z: 80, yaw: 0, elbow: right}\nb: {x: 9, y: 300, z: 80, yaw: 0, elbow: right}",
                steps);
    }

    @Test
    void longProgramsThatDifferAltogetherAreNotComparedOneByOne() {
        String[] before = new String[2100];
        String[] after = new String[2100];
        java.util.Arrays.fill(before, "{wait-s: 1}");
        java.util.Arrays.fill(after, "{do: grip}");

        assertThatCode(() -> assertThat(words(sheet(before), sheet(after)))
                        .containsExactly("2100 steps replaced by 2100 others"))
                .doesNotThrowAnyException();
    }
}
