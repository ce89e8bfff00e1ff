package org.standclear.cell.web;

import java.util.Locale;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.standclear.cell.DayTestReadings;

/** The day test as it was typed. */
record DayTestForm(
        @Nullable String formToken,
        @Nullable String stopStation,
        @Nullable String stayedStopped,
        @Nullable String restartedOnUnlatching,
        @Nullable String armSound,
        @Nullable String power,
        @Nullable String sensitivity,
        @Nullable String overridePercent,
        @Nullable String toolCode,
        @Nullable String lineAndSignInPlace,
        @Nullable String stationReason) {

    static DayTestForm empty() {
        return new DayTestForm(null, null, null, null, null, null, null, null, null, null, null);
    }

    /** The readings, or nothing and the errors say why. */
    Optional<DayTestReadings> readings(FormErrors errors) {
        String station = TextField.read(errors, "stopStation", stopStation, 80, "Name the e-stop that was pressed.");
        boolean stayed =
                yesNo(errors, "stayedStopped", stayedStopped, "Say whether the arm stopped and stayed stopped.");
        boolean restarted =
                yesNo(errors, "restartedOnUnlatching", restartedOnUnlatching, "Say what the arm did on unlatching.");
        boolean sound = yesNo(errors, "armSound", armSound, "Say whether cables, bolts and noise are in order.");
        String mode = powerRead(errors);
        String level = TextField.read(
                errors, "sensitivity", sensitivity, 40, "Type the collision sensitivity as the display shows it.");
        double override = overrideRead(errors);
        String tool = TextField.read(errors, "toolCode", toolCode, 60, "Type the code on the fitted tool.");
        boolean line =
                yesNo(errors, "lineAndSignInPlace", lineAndSignInPlace, "Say whether line and sign are in place.");
        return errors.any()
                ? Optional.empty()
                : Optional.of(
                        new DayTestReadings(station, stayed, restarted, sound, mode, level, override, tool, line));
    }

    private String powerRead(FormErrors errors) {
        String typed = power == null ? "" : power.strip().toLowerCase(Locale.ROOT);
        if (!typed.equals("reduced") && !typed.equals("full")) {
            errors.add("power", "Type reduced or full, as the display shows it.");
        }
        return typed;
    }

    private double overrideRead(FormErrors errors) {
        String typed = overridePercent == null
                ? ""
                : overridePercent.strip().replace("%", "").strip();
        // digits only, so that words that Java would take for numbers are refused
        double value =
                typed.matches("\\d{1,3}([.,]\\d{1,4})?") ? Double.parseDouble(typed.replace(',', '.')) : Double.NaN;
        if (!(value > 0 && value <= 100)) {
            errors.add("overridePercent", "Type the override as the display shows it: above 0 and at most 100 %.");
        }
        return value;
    }

    private static boolean yesNo(FormErrors errors, String field, @Nullable String value, String ask) {
        if (!"yes".equals(value) && !"no".equals(value)) {
            errors.add(field, ask);
        }
        return "yes".equals(value);
    }
}
