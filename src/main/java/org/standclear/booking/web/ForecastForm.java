package org.standclear.booking.web;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.standclear.core.forecast.Arrival;
import org.standclear.people.DueDates.DueAssignment;
import org.standclear.people.DueDates.DueSection;
import org.standclear.platform.ids.SectionId;
import org.standclear.platform.time.LabTime;

/**
 * What the forecast is asked for.
 *
 * @param due the day of each section, under {@code due-<section>}
 * @param pairs whether people work in pairs
 */
record ForecastForm(
        Map<String, String> due,
        @Nullable String growth,
        @Nullable String leadDays,
        boolean pairs) {

    /** The fields as they stand in a query. */
    static ForecastForm of(Map<String, String> query) {
        return new ForecastForm(query, query.get("growth"), query.get("leadDays"), "true".equals(query.get("pairs")));
    }

    static String field(SectionId section) {
        return "due-" + section;
    }

    /** What stands in each date field: what was typed, else the day in force. */
    Map<String, String> values(DueAssignment assignment, LabTime labTime) {
        Map<String, String> values = new LinkedHashMap<>();
        for (DueSection section : assignment.sections()) {
            String field = field(section.id());
            values.put(
                    field, due.getOrDefault(field, labTime.date(section.due()).toString()));
        }
        values.put("growth", growth == null ? String.valueOf(Arrival.USUAL.growth()) : growth);
        values.put("leadDays", leadDays == null ? String.valueOf(Arrival.USUAL.leadDays()) : leadDays);
        return values;
    }

    /** The day of each section; the one in force where what was typed is no day, which then stands in the errors. */
    Map<SectionId, LocalDate> days(DueAssignment assignment, LabTime labTime, Map<String, String> errors) {
        Map<SectionId, LocalDate> days = new LinkedHashMap<>();
        LocalDate last = labTime.today().plusDays(180);
        for (DueSection section : assignment.sections()) {
            String typed = due.get(field(section.id()));
            LocalDate day = labTime.date(section.due());
            if (typed != null) {
                try {
                    LocalDate read = LocalDate.parse(typed.strip());
                    if (read.isAfter(last)) {
                        errors.put(
                                field(section.id()),
                                "Section " + section.code() + ": choose a day within 180 days, up to " + last + ".");
                    } else {
                        day = read;
                    }
                } catch (DateTimeException notADay) {
                    errors.put(field(section.id()), "Section " + section.code() + ": write a day as year-month-day.");
                }
            }
            days.put(section.id(), day);
        }
        return days;
    }

    Arrival arrival(Map<String, String> errors) {
        int lead = leadDays == null || !leadDays.strip().matches("[0-9]{1,2}")
                ? Arrival.USUAL.leadDays()
                : Integer.parseInt(leadDays.strip());
        double grows = growth == null || !growth.strip().matches("[0-9]{1,2}(\\.[0-9]{1,3})?")
                ? Arrival.USUAL.growth()
                : Double.parseDouble(growth.strip());
        if (growth != null && (!growth.strip().matches("[0-9]{1,2}(\\.[0-9]{1,3})?") || grows < 1 || grows > 10)) {
            errors.put("growth", "Write a number from 1 to 10, such as 1.75.");
            grows = Arrival.USUAL.growth();
        }
        if (leadDays != null && (!leadDays.strip().matches("[0-9]{1,2}") || lead < 1 || lead > 60)) {
            errors.put("leadDays", "Write a whole number from 1 to 60.");
            lead = Arrival.USUAL.leadDays();
        }
        return new Arrival(lead, grows);
    }
}
