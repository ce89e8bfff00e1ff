package org.standclear.demo;

import java.time.LocalDate;
import java.util.List;
import org.springframework.context.annotation.Profile;
import org.springframework.stereotype.Component;
import org.standclear.cell.RecurringDuties;
import org.standclear.cell.RecurringDuties.RecordDuty;
import org.standclear.cell.RecurringDuty;
import org.standclear.platform.ids.CellId;

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
    private record Seed(String cell, int inspectedDaysBefore, int reviewedDaysBefore) {}

    private static final List<Seed> SEEDS = List.of(
            new Seed("Avocet", 336, 120),
            new Seed("Bittern", 200, 121),
            new Seed("Curlew", 90, 330),
            new Seed("Dunlin", 45, 122));

    void record(LocalDate term, Roster roster) {
        for (Seed seed : SEEDS) {
            CellId cell = roster.cell(seed.cell());
            duties.setInterval(
                    cell, RecurringDuty.INSPECTION, YEAR, "the college's rule for its machines", roster.person("ines"));
            duties.setInterval(
                    cell,
                    RecurringDuty.RISK_ASSESSMENT,
                    YEAR,
                    "once a year, and after every change of layout",
                    roster.person("ines"));
            duties.record(new RecordDuty(
                    cell,
                    RecurringDuty.INSPECTION,
                    term.minusDays(seed.inspectedDaysBefore()),
                    "Perrin Oxbow, inspector of machines",
                    "guards, cables and stops in order",
                    roster.person("adaeze")));
            duties.record(new RecordDuty(
                    cell,
                    RecurringDuty.RISK_ASSESSMENT,
                    term.minusDays(seed.reviewedDaysBefore()),
                    "Rosalind Oyelaran-Pike",
                    "no new hazard; stand line kept at 1800 mm",
                    roster.person("ines")));
        }
    }
}
