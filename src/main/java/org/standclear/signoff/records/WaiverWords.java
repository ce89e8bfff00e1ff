package org.standclear.signoff.records;

import java.time.Clock;
import org.springframework.stereotype.Component;
import org.standclear.check.CheckWords;
import org.standclear.people.People;
import org.standclear.platform.ids.AnswerId;
import org.standclear.platform.ids.BookingId;
import org.standclear.platform.time.LabTime;
import org.standclear.signoff.Waiver;

/** Says a waiver in one line, as statements, cards and pages print it. */
@Component
class WaiverWords {

    private final WaiverRows rows;
    private final People people;
    private final LabTime labTime;
    private final Clock clock;

    WaiverWords(WaiverRows rows, People people, LabTime labTime, Clock clock) {
        this.rows = rows;
        this.people = people;
        this.labTime = labTime;
        this.clock = clock;
    }

    /** The one that stands; empty when none does. */
    String words(BookingId booking, AnswerId answer) {
        return rows.standing(booking, answer, clock.instant()).map(this::of).orElse("");
    }

    String of(Waiver waiver) {
        return "Waived for one run by " + people.printedName(waiver.givenBy()) + " until "
                + labTime.time(waiver.expiresAt()) + ": " + CheckWords.checks(waiver.checks()) + ". Reason: "
                + waiver.reason() + waiver.confirmed();
    }
}
