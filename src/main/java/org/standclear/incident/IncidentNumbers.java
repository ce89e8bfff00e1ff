package org.standclear.incident;

import java.util.List;
import org.standclear.platform.numbers.LabNumber;
import org.standclear.platform.numbers.LabNumber.Range;
import org.standclear.platform.numbers.LabNumber.Said;
import org.standclear.platform.numbers.LabNumbers;
import org.standclear.platform.numbers.NumberSet;

/** Keeps the numbers of incidents, with who changed them and why. */
public interface IncidentNumbers extends LabNumbers<IncidentSettings> {

    /** Their table, their questions, and between what each may be. */
    NumberSet<IncidentSettings> SET = new NumberSet<>(
            "incident_settings",
            List.of(
                    new LabNumber(
                            "contactFormHours",
                            "Form of a contact or of damage (classes 3 and 4), hours",
                            Range.of(1, 24).and(", from when it happened"),
                            Said.of("Form of a contact or of damage", "h")),
                    new LabNumber(
                            "injuryFormHours",
                            "Form of an injury (classes 5 and 6), hours",
                            Range.of(1, 72).and("; it is told at once all the same"),
                            Said.of("Form of an injury", "h")),
                    new LabNumber(
                            "effectCheckDays",
                            "Look whether an action helped, days after it was done",
                            Range.of(7, 365),
                            Said.of("Look whether an action helped", "days after"))),
            now -> List.of(now.contactFormHours(), now.injuryFormHours(), now.effectCheckDays()),
            n -> new IncidentSettings(n.get(0), n.get(1), n.get(2)),
            IncidentSettings.DEFAULTS);
}
