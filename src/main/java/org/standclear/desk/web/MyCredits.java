package org.standclear.desk.web;

import java.util.ArrayList;
import java.util.List;
import org.springframework.stereotype.Component;
import org.standclear.booking.Turns;
import org.standclear.booking.Turns.MakeUp;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.time.LabTime;
import org.standclear.run.Credits;

/** What a person has to make up: minutes that precautionary stops took, and bookings beyond the quotas. */
@Component
class MyCredits {

    private final Credits credits;
    private final Turns turns;
    private final LabTime labTime;

    MyCredits(Credits credits, Turns turns, LabTime labTime) {
        this.credits = credits;
        this.turns = turns;
        this.labTime = labTime;
    }

    /** In words; empty when there is nothing to make up. */
    List<String> lines(PersonId person) {
        List<String> lines = new ArrayList<>();
        int minutes = credits.open(person);
        if (minutes > 0) {
            lines.add(
                    minutes + " min of your slots went to precautionary stops and are credited to you. From half a slot"
                            + " on they become a booking beyond the quotas.");
        }
        turns.makeUpsOf(person).stream()
                .filter(MakeUp::stands)
                .map(one -> "One booking beyond the quotas, to be used until " + labTime.day(one.validUntil()) + ".")
                .forEach(lines::add);
        return List.copyOf(lines);
    }
}
