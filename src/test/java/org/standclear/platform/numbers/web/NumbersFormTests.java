package org.standclear.platform.numbers.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.standclear.platform.numbers.LabNumber;
import org.standclear.platform.numbers.LabNumber.Range;
import org.standclear.platform.numbers.LabNumber.Said;
import org.standclear.platform.numbers.NumberSet;

/** A form of numbers: each at its limits, one that another one limits, and the reason. */
class NumbersFormTests {

    private record Ferry(int cars, int bicycles) {}

    private static final NumberSet<Ferry> SET = new NumberSet<>(
            "ferries",
            List.of(
                    new LabNumber("carsAboard", "Cars", Range.of(2, 9), Said.of("cars")),
                    new LabNumber(
                            "bicyclesAboard",
                            "Bicycles",
                            new Range(0, 20, "carsAboard", "as many as cars"),
                            new Said("bicycles", " at most", "none"))),
            ferry -> List.of(ferry.cars(), ferry.bicycles()),
            n -> new Ferry(n.get(0), n.get(1)),
            new Ferry(4, 0));

    private static NumbersForm<Ferry> form(String cars, String bicycles, String reason) {
        return new NumbersForm<>(SET, Map.of("carsAboard", cars, "bicyclesAboard", bicycles, "reason", reason));
    }

    @ParameterizedTest
    @CsvSource({"2, 0", "9, 9", "5, 5", "' 7 ', 3"})
    void readsNumbersAtTheirLimits(String cars, String bicycles) {
        assertThat(form(cars, bicycles, "a calm sea").read())
                .contains(new Ferry(Integer.parseInt(cars.strip()), Integer.parseInt(bicycles)));
    }

    @ParameterizedTest
    @ValueSource(strings = {"1", "10", "", "-3", "4.0", "four", "٤", "999999999999"})
    void refusesWhatIsNoNumberWithinTheLimits(String cars) {
        NumbersForm<Ferry> form = form(cars, "1", "a calm sea");
        assertThat(form.read()).isEmpty();
        assertThat(form.errors()).containsOnlyKeys("carsAboard");
        assertThat(form.errors().get("carsAboard"))
                .isEqualTo("Write a whole number from 2 to 9; \"" + cars + "\" is not.");
        assertThat(form.field("carsAboard")).isEqualTo(cars);
    }

    @Test
    void limitsOneNumberByAnother() {
        NumbersForm<Ferry> form = form("5", "6", "a calm sea");
        assertThat(form.read()).isEmpty();
        assertThat(form.errors().get("bicyclesAboard")).contains("from 0 to 5");
        NumbersForm<Ferry> unread = form("x", "20", "a calm sea");
        assertThat(unread.read()).isEmpty();
        assertThat(unread.errors()).containsOnlyKeys("carsAboard");
    }

    @Test
    void asksForAReason() {
        NumbersForm<Ferry> form = form("5", "5", " ");
        assertThat(form.read()).isEmpty();
        assertThat(form.errors()).containsOnlyKeys("reason");
        NumbersForm<Ferry> longest = form("5", "5", "x".repeat(400));
        assertThat(longest.read()).isPresent();
        assertThat(form("5", "5", "x".repeat(401)).read()).isEmpty();
    }

    @Test
    void saysWhatHolds() {
        NumbersForm<Ferry> form = NumbersForm.of(SET, SET.defaults());
        assertThat(form.field("seen")).isEqualTo("4 0");
        assertThat(form.field("carsAboard")).isEqualTo("4");
        assertThat(SET.words(SET.defaults())).containsExactly(Map.entry("cars", "4"), Map.entry("bicycles", "none"));
        assertThat(SET.words(new Ferry(4, 3))).containsEntry("bicycles", "3 at most");
        assertThat(SET.numbers().get(0).column()).isEqualTo("cars_aboard");
    }
}
