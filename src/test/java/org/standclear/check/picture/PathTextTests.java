package org.standclear.check.picture;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class PathTextTests {

    @ParameterizedTest
    @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY})
    void refusesWhatIsNoNumber(double value) {
        assertThatThrownBy(() -> PathText.number(value)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new Place(value, 0)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new Place(0, value)).isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void writesNumbersShortly() {
        assertThat(PathText.number(12)).isEqualTo("12");
        assertThat(PathText.number(-0.04)).isEqualTo("0");
        assertThat(PathText.number(12.34)).isEqualTo("12.3");
        assertThat(PathText.number(1e6)).isEqualTo("1000000");
    }

    @Test
    void leavesOutCornersOnAStraightLine() {
        List<Place> places = new ArrayList<>();
        for (int i = 0; i <= 100; i++) {
            places.add(new Place(i, 2 * i));
        }

        assertThat(PathText.line(places)).isEqualTo("M0 0L100 200");
    }

    @Test
    void keepsACurveWithinWhatCanBeSeen() {
        List<Place> circle = new ArrayList<>();
        for (int i = 0; i <= 360; i++) {
            circle.add(new Place(100 * Math.cos(Math.toRadians(i)), 100 * Math.sin(Math.toRadians(i))));
        }
        List<Place> kept = PathText.simplified(circle);

        assertThat(kept).hasSizeLessThan(80);
        for (int i = 1; i < kept.size(); i++) {
            Place middle = new Place(
                    (kept.get(i).x() + kept.get(i - 1).x()) / 2,
                    (kept.get(i).y() + kept.get(i - 1).y()) / 2);
            assertThat(middle.distance(new Place(0, 0))).isCloseTo(100, within(0.2));
        }
    }

    @Test
    void keepsWhereALineTurnsBack() {
        List<Place> there = List.of(new Place(0, 0), new Place(50, 0), new Place(10, 0));

        assertThat(PathText.line(there)).isEqualTo("M0 0L50 0L10 0");
    }

    @Test
    void hatchesInsideTheBoxOnly() {
        List<Place> ends = DrawnPlaces.of(PathText.hatch(new Place(10, 60), new Place(40, 20), 7));

        assertThat(ends).hasSizeGreaterThan(10).allSatisfy(place -> {
            assertThat(place.x()).isBetween(10.0, 40.0);
            assertThat(place.y()).isBetween(20.0, 60.0);
        });
    }

    @Test
    void scalesRunFromEndToEndAndNoFurther() {
        Scale up = new Scale(-10, 30, 200, 0);

        assertThat(up.at(-10)).isEqualTo(200);
        assertThat(up.at(10)).isEqualTo(100);
        assertThat(up.at(31)).isZero();
        assertThat(up.at(Double.NEGATIVE_INFINITY)).isEqualTo(200);
        assertThat(up.at(Double.NaN)).isZero();
        assertThat(up.length(4)).isEqualTo(20);
        assertThat(new Scale(0, 12.4, 0, 1).roundStep(8)).isEqualTo(2);
        assertThatThrownBy(() -> new Scale(5, 5, 0, 1)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new Scale(0, Double.NaN, 0, 1)).isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void bandsAreInclusiveAndWhatIsNoNumberIsAbove() {
        assertThat(SpeedBand.of(0, 240)).isEqualTo(SpeedBand.SLOW);
        assertThat(SpeedBand.of(80, 240)).isEqualTo(SpeedBand.SLOW);
        assertThat(SpeedBand.of(80.1, 240)).isEqualTo(SpeedBand.MEDIUM);
        assertThat(SpeedBand.of(160, 240)).isEqualTo(SpeedBand.MEDIUM);
        assertThat(SpeedBand.of(240, 240)).isEqualTo(SpeedBand.NEAR);
        assertThat(SpeedBand.of(240.1, 240)).isEqualTo(SpeedBand.OVER);
        assertThat(SpeedBand.of(Double.NaN, 240)).isEqualTo(SpeedBand.OVER);
    }
}
