package org.standclear.demo;

import java.time.LocalDate;
import java.util.List;
import org.springframework.context.annotation.Profile;
import org.springframework.stereotype.Component;
import org.standclear.cell.RecurringDuties;
import org.standclear.cell.RecurringDuties.RecordDuty;
import org.standclear.cell.RecurringDuty;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.PersonId;

/** Inspections and risk-assessment reviews of the demo's cells, some of them due soon. */
@Component
@Profile("demo")
class DemoDuties {

    private static final int YEAR = 365;

    private final RecurringDuties duties;

    DemoDuties(RecurringDuties duties) {
        this.duties = duties;
    }

    /** How many days before the term something was done, so that the dates spread over the year. */
    record Seed(String cell, int inspectedDaysBefore, int reviewedDaysBefore) {}

    /** Who set the times and who wrote down that it was done. */
    record Staff(PersonId instructor, PersonId technician, String reviewer) {}

    private static final List<Seed> SEEDS = List.of(
            new Seed("Avocet", 336, 120),
            new Seed("Bittern", 200, 121),
            new Seed("Curlew", 90, 330),
            new Seed("Dunlin", 45, 122));

    void record(LocalDate term, Roster roster) {
        record(
                SEEDS,
                term,
                roster,
                new Staff(roster.person("ines"), roster.person("adaeze"), "Rosalind Oyelaran-Pike"));
    }

    void record(List<Seed> seeds, LocalDate term, Roster roster, Staff staff) {
        for (Seed seed : seeds) {
            CellId cell = roster.cell(seed.cell());
            duties.setInterval(
                    cell, RecurringDuty.INSPECTION, YEAR, "the college's rule for its machines", staff.instructor());
            duties.setInterval(
                    cell,
                    RecurringDuty.RISK_ASSESSMENT,
                    YEAR,
                    "once a year, and after every change of layout",
                    staff.instructor());
            duties.record(new RecordDuty(
                    cell,
                    RecurringDuty.INSPECTION,
                    term.minusDays(seed.inspectedDaysBefore()),
                    "Perrin Oxbow, inspector of machines",
                    "guards, cables and stops in order",
                    staff.technician()));
            duties.record(new RecordDuty(
                    cell,
                    RecurringDuty.RISK_ASSESSMENT,
                    term.minusDays(seed.reviewedDaysBefore()),
                    staff.reviewer(),
                    "no new hazard; stand line kept at 1800 mm",
                    staff.instructor()));
        }
    }
}
