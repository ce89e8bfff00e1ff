package org.standclear.booking;

import java.util.List;
import org.standclear.platform.numbers.LabNumbers;
import org.standclear.platform.numbers.NumberSet;

/** Keeps the numbers of the booking rules, with who changed them and why. */
public interface BookingNumbers extends LabNumbers<BookingSettings> {

    /** Their table, their questions, and between what each may be. */
    NumberSet<BookingSettings> SET = new NumberSet<>(
            "booking_settings",
            BookingQuestions.ALL,
            now -> List.of(
                    now.slotMinutes(),
                    now.horizonDays(),
                    now.futurePerPerson(),
                    now.weekPerPerson(),
                    now.perAssignment(),
                    now.lateReleaseHours(),
                    now.lateCancelMinutes(),
                    now.checkInOpensMinutes(),
                    now.graceMinutes(),
                    now.offerMinutes(),
                    now.confirmMinutes()),
            n -> new BookingSettings(
                    n.get(0), n.get(1), n.get(2), n.get(3), n.get(4), n.get(5), n.get(6), n.get(7), n.get(8), n.get(9),
                    n.get(10)),
            BookingSettings.DEFAULTS);
}
