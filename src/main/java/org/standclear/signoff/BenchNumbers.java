package org.standclear.signoff;

import java.util.List;
import org.standclear.platform.numbers.LabNumber;
import org.standclear.platform.numbers.LabNumber.Range;
import org.standclear.platform.numbers.LabNumber.Said;
import org.standclear.platform.numbers.LabNumbers;
import org.standclear.platform.numbers.NumberSet;

/** Keeps the numbers of the bench, with who changed them and why. */
public interface BenchNumbers extends LabNumbers<BenchSettings> {

    /** Their table, their questions, and between what each may be. */
    NumberSet<BenchSettings> SET = new NumberSet<>(
            "signoff_settings",
            List.of(
                    new LabNumber(
                            "releaseHoldsMinutes",
                            "A release that is not started lapses after, minutes",
                            Range.of(1, 30),
                            Said.of("A release waits", "min")),
                    new LabNumber(
                            "sessionOpensMinutes",
                            "The session list opens before the slot, minutes",
                            Range.of(0, 60),
                            Said.of("Session list opens", "min before")),
                    new LabNumber(
                            "turnMinutes",
                            "Longest turn at the e-stop, minutes",
                            Range.of(1, 60).and("; then somebody else takes it"),
                            Said.of("Turn at the e-stop", "min")),
                    new LabNumber(
                            "restMinutes",
                            "Rest before a new turn, minutes",
                            Range.of(1, 60).and(" away from every e-stop"),
                            Said.of("Rest", "min")),
                    new LabNumber(
                            "firstRunMinutes",
                            "Longest watched first run, minutes",
                            Range.of(1, 60).and(", for a program that loops until it is stopped"),
                            Said.of("First run", "min")),
                    new LabNumber(
                            "lookAfterStops",
                            "Protective stops in one slot that hold the cell",
                            Range.of(1, 5).and("; somebody looks before the next"),
                            Said.of("Protective stops that hold the cell"))),
            now -> List.of(
                    now.releaseHoldsMinutes(),
                    now.sessionOpensMinutes(),
                    now.turnMinutes(),
                    now.restMinutes(),
                    now.firstRunMinutes(),
                    now.lookAfterStops()),
            n -> new BenchSettings(n.get(0), n.get(1), n.get(2), n.get(3), n.get(4), n.get(5)),
            BenchSettings.DEFAULTS);
}
