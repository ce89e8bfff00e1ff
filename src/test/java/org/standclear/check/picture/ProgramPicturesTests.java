package org.standclear.check.picture;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.standclear.check.picture.Drawing.Line;
import org.standclear.check.picture.Drawing.StepLines;
import org.standclear.core.CellText;
import org.standclear.core.SheetText;
import org.standclear.core.SixAxisText;
import org.standclear.core.check.CheckAnswer;
import org.standclear.core.geometry.Vector;
import org.standclear.core.timeline.Timeline;

class ProgramPicturesTests {

    /** Drawings write one decimal. */
    private static final double DRAWN = 0.06;

    private static final String HOME = "home: {x: 0, y: 300, z: 80, yaw: 0, elbow: right}";

    private static CheckAnswer scara(SheetText sheet) {
        return sheet.checkedOn(CellText.scara());
    }

    private static SheetText many(int steps) {
        StringBuilder points = new StringBuilder(HOME).append('\n');
        String[] moves = new String[steps];
        for (int i = 0; i < steps; i++) {
            double turn = i * 2.399963;
            double far = 30 + 90 * Math.abs(Math.sin(i * 0.37));
            points.append("p%d: {x: %.2f, y: %.2f, z: %d, yaw: 0, elbow: right}%n"
                    .formatted(i, far * Math.cos(turn), 270 + far * Math.sin(turn), 20 + i % 60));
            moves[i] = i % 2 == 0 ? "{move: p" + i + ", speed-percent: 20}" : "{straight: p" + i + ", speed-mm-s: 120}";
        }
        return SheetText.of(points.toString(), moves).startingAt("home");
    }

    static Stream<Arguments> programs() {
        SheetText scara = SheetText.scara();
        return Stream.of(
                Arguments.of("usual", scara(scara)),
                Arguments.of("no start", scara(scara.without("start: home"))),
                Arguments.of(
                        "no speed of an axis", scara.checkedOn(CellText.scara().with("speed: 450, ", ""))),
                Arguments.of(
                        "one step", scara(SheetText.of(HOME, "{move: home}").startingAt("home"))),
                Arguments.of("one step, no start", scara(SheetText.of(HOME, "{move: home}"))),
                Arguments.of(
                        "only a wait", scara(SheetText.of(HOME, "{wait-s: 2}").startingAt("home"))),
                Arguments.of("out of reach", scara(scara.with("x: -120, y: 200, z: 20", "x: -900, y: 200, z: 20"))),
                Arguments.of("far away", scara(scara.with("x: -120, y: 200, z: 20", "x: 1000000, y: 1e6, z: -1e6"))),
                Arguments.of("for ever", scara(scara.with("part-kg: 0.06", "part-kg: 0.06\n  loop: forever"))),
                Arguments.of(
                        "other elbow", scara(scara.with("z: 20, yaw: 0, elbow: right", "z: 20, yaw: 0, elbow: left"))),
                Arguments.of(
                        "no limits but the needed",
                        scara.checkedOn(CellText.scara().without("space:"))),
                Arguments.of(
                        "gantry",
                        new SheetText(scara.text().replace(", elbow: right", "")).checkedOn(CellText.gantry())),
                Arguments.of("six axes", SixAxisText.sheet().checkedOn(SixAxisText.cell())),
                Arguments.of("2000 steps", scara(many(2000))));
    }

    private static Stream<Drawing> drawings(ProgramPictures pictures) {
        return Stream.concat(
                Stream.of(pictures.plan(), pictures.side(), pictures.speed(), pictures.axes()),
                pictures.frames().stream());
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("programs")
    void everyLineIsOnThePaper(String name, CheckAnswer answer) {
        assertThat(drawings(ProgramPictures.of(answer))).allSatisfy(drawing -> {
            assertThat(drawing.says()).isNotBlank().doesNotContain("NaN", "Infinity");
            Stream<Line> lines = Stream.concat(
                    drawing.back().stream(),
                    drawing.steps().stream().map(StepLines::lines).flatMap(List::stream));
            assertThat(lines.flatMap(line -> DrawnPlaces.of(line.path()).stream()))
                    .allSatisfy(place -> {
                        assertThat(place.x()).isBetween(-DRAWN, drawing.width() + DRAWN);
                        assertThat(place.y()).isBetween(-DRAWN, drawing.height() + DRAWN);
                    });
            assertThat(drawing.words()).allSatisfy(word -> {
                assertThat(Double.parseDouble(word.x())).isBetween(0.0, (double) drawing.width());
                assertThat(Double.parseDouble(word.y())).isBetween(0.0, (double) drawing.height());
                assertThat(word.text()).doesNotContain("NaN", "Infinity");
            });
        });
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("programs")
    void momentsOfPlayBackAreFewAndComplete(String name, CheckAnswer answer) {
        Map<String, ?> play = ProgramPictures.of(answer).play();

        assertThat((List<?>) play.get("moments")).hasSizeBetween(2, 1500);
        assertThat((Double) play.get("seconds")).isFinite().isNotNegative();
        assertThat(play.toString()).doesNotContain("NaN", "Infinity");
    }

    @Test
    void knownPointsLandWhereTheScalePutsThem() {
        CheckAnswer answer = scara(SheetText.scara());
        Samples samples = Samples.of(Timeline.held(answer.motion(), 100));
        View view = new Views(answer, samples).planView();
        StepLines first = ProgramPictures.of(answer).plan().steps().get(0);
        List<Place> way = new ArrayList<>();
        first.lines().forEach(line -> way.addAll(DrawnPlaces.of(line.path())));

        // the space of the cell, 500 mm wide, and the ring of 400 mm around axis 1 are seen whole across
        double mm = view.length(1);
        Place axis1 = view.at(new Vector(0, 0, 0));
        assertThat(mm).isCloseTo((Views.WIDTH - 52) / (800 * 1.08), within(0.02));
        assertThat(way.get(0).x()).isCloseTo(axis1.x(), within(DRAWN));
        assertThat(way.get(0).y()).isCloseTo(axis1.y() - 300 * mm, within(DRAWN));
        Place end = way.get(way.size() - 1);
        assertThat(end.x()).isCloseTo(axis1.x() - 120 * mm, within(DRAWN));
        assertThat(end.y()).isCloseTo(axis1.y() - 200 * mm, within(DRAWN));
    }

    @Test
    void aStepAboveTheLimitIsDrawnAsSuch() {
        CheckAnswer answer = scara(SheetText.scara()
                .with("power: reduced", "power: full")
                .with("speed-percent: 20", "speed-percent: 100"));

        assertThat(answer.motion().steps().get(0).peaks())
                .satisfies(peaks -> assertThat(peaks.heldTool()).isGreaterThan(250));
        assertThat(ProgramPictures.of(answer).plan().steps().get(0).lines())
                .extracting(Line::look)
                .contains(SpeedBand.OVER.look());
        assertThat(ProgramPictures.of(answer).rows().get(0).band()).isEqualTo(SpeedBand.OVER.words());
    }

    @Test
    void theDrawnSpeedReachesItsPeakAndTheLimitItsPlace() {
        CheckAnswer answer = scara(SheetText.scara());
        Drawing speed = ProgramPictures.of(answer).speed();
        double perMmS = heightOf(speed, "limit") / 250;

        // scales end at the same base line, 252 below the top
        assertThat(heightOf(speed, "speed")).isCloseTo(answer.figures().knownToolPeakMmS() * perMmS, within(0.6));
        assertThat(heightOf(speed, "ghost")).isCloseTo(answer.figures().knownFullPowerPeakMmS() * perMmS, within(0.6));
    }

    private static double heightOf(Drawing drawing, String look) {
        return drawing.back().stream()
                .filter(line -> line.look().equals(look))
                .flatMap(line -> DrawnPlaces.of(line.path()).stream())
                .mapToDouble(place -> 252 - place.y())
                .max()
                .orElseThrow();
    }

    @Test
    void aProgramOfTwoThousandStepsStaysLight() {
        ProgramPictures pictures = ProgramPictures.of(scara(many(2000)));
        long bytes = drawings(pictures)
                .flatMap(drawing -> Stream.concat(
                        drawing.back().stream(), drawing.steps().stream().flatMap(step -> step.lines().stream())))
                .mapToLong(line -> line.path().length() + 40L)
                .sum();

        assertThat(bytes).isLessThan(1_000_000);
        assertThat(pictures.plan().steps()).hasSize(WayLines.STEPS_OF_THEIR_OWN + 1);
        assertThat(pictures.leftOut()).isNull();
    }
}
