package org.standclear.trail.web;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.format.DateTimeParseException;
import java.util.LinkedHashMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.standclear.platform.ids.LabId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.web.FilterFields;
import org.standclear.trail.TrailFilter;

/** The filter fields of the page; an empty field means any. */
record RecordFilterForm(String kind, String person, String about, String day) {

    /** The fields as they came. */
    static RecordFilterForm of(Map<String, String> parameters) {
        return new RecordFilterForm(
                FilterFields.tidy(parameters.get("kind")),
                FilterFields.tidy(parameters.get("person")),
                FilterFields.tidy(parameters.get("about")),
                FilterFields.tidy(parameters.get("day")));
    }

    /** The path with this filter behind it. */
    String address(String path) {
        return FilterFields.address(path, fields());
    }

    /** The page of entries before that one. */
    String older(long before) {
        Map<String, String> fields = fields();
        fields.put("before", Long.toString(before));
        return FilterFields.address("/record", fields);
    }

    private Map<String, String> fields() {
        Map<String, String> fields = new LinkedHashMap<>();
        fields.put("kind", kind);
        fields.put("person", person);
        fields.put("about", about);
        fields.put("day", day);
        return fields;
    }

    /** What is wrong, by field. */
    Map<String, String> errors() {
        Map<String, String> errors = new LinkedHashMap<>();
        if (!day.isEmpty() && date() == null) {
            errors.put("day", "\"" + day + "\" is no date. Write it as 2026-03-11, or leave it empty.");
        }
        if (!person.isEmpty() && personId() == null) {
            errors.put("person", "That is not the id of a person. Choose one from the list.");
        }
        return errors;
    }

    /** The filter; fields that cannot be read count as empty. */
    TrailFilter filter(LabId lab, ZoneId zone) {
        LocalDate date = date();
        return new TrailFilter(
                lab, kind, personId(), about, start(date, zone), date == null ? null : start(date.plusDays(1), zone));
    }

    private static @Nullable Instant start(@Nullable LocalDate date, ZoneId zone) {
        return date == null ? null : date.atStartOfDay(zone).toInstant();
    }

    private @Nullable LocalDate date() {
        try {
            LocalDate date = day.isEmpty() ? null : LocalDate.parse(day);
            return date == null || date.getYear() < 1900 || date.getYear() > 9998 ? null : date;
        } catch (DateTimeParseException notADate) {
            return null;
        }
    }

    @Nullable
    PersonId personId() {
        try {
            return person.isEmpty() ? null : PersonId.of(person);
        } catch (IllegalArgumentException notAnId) {
            return null;
        }
    }
}
