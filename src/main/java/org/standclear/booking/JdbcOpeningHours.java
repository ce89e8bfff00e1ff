package org.standclear.booking;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.springframework.transaction.annotation.Transactional;
import org.standclear.platform.ids.LabId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.lab.Labs;
import org.standclear.trail.Trail;
import org.standclear.trail.TrailEntry;

/** Opening hours as the tables have them. */
@Repository
class JdbcOpeningHours implements OpeningHours {

    private final JdbcClient jdbc;
    private final Labs labs;
    private final Trail trail;

    JdbcOpeningHours(JdbcClient jdbc, Labs labs, Trail trail) {
        this.jdbc = jdbc;
        this.labs = labs;
        this.trail = trail;
    }

    @Override
    public DayHours on(LocalDate day) {
        return from(day, day).get(0);
    }

    @Override
    public List<DayHours> from(LocalDate first, LocalDate last) {
        Map<DayOfWeek, List<OpenPeriod>> week = week();
        Map<LocalDate, DayHours> exceptions = exceptions(first, last);
        return first.datesUntil(last.plusDays(1))
                .map(day -> exceptions.getOrDefault(
                        day, new DayHours(day, week.getOrDefault(day.getDayOfWeek(), List.of()), "")))
                .toList();
    }

    @Override
    public Map<DayOfWeek, List<OpenPeriod>> week() {
        Map<DayOfWeek, List<OpenPeriod>> week = new TreeMap<>();
        jdbc.sql("select weekday, opens, closes from opening_hours where lab_id = :lab order by weekday, opens")
                .param("lab", lab().value())
                .query((row, number) -> week.computeIfAbsent(
                                DayOfWeek.of(row.getInt("weekday")), unknown -> new ArrayList<>())
                        .add(new OpenPeriod(
                                row.getObject("opens", LocalTime.class), row.getObject("closes", LocalTime.class))))
                .list();
        return week;
    }

    private Map<LocalDate, DayHours> exceptions(LocalDate first, LocalDate last) {
        Map<LocalDate, String> notes = new HashMap<>();
        Map<LocalDate, List<OpenPeriod>> periods = new HashMap<>();
        jdbc.sql("""
                select e.lab_date, e.reason, p.opens, p.closes
                from opening_exceptions e
                left join opening_exception_periods p on p.lab_id = e.lab_id and p.lab_date = e.lab_date
                where e.lab_id = :lab and e.lab_date between :first and :last order by e.lab_date, p.opens""")
                .param("lab", lab().value())
                .param("first", first)
                .param("last", last)
                .query((row, number) -> {
                    LocalDate day = row.getObject("lab_date", LocalDate.class);
                    LocalTime opens = row.getObject("opens", LocalTime.class);
                    if (opens != null) {
                        periods.computeIfAbsent(day, unknown -> new ArrayList<>())
                                .add(new OpenPeriod(opens, row.getObject("closes", LocalTime.class)));
                    }
                    return notes.put(day, row.getString("reason"));
                })
                .list();
        Map<LocalDate, DayHours> exceptions = new HashMap<>();
        notes.forEach((day, note) ->
                exceptions.put(day, new DayHours(day, periods.getOrDefault(day, List.of()), note)));
        return exceptions;
    }

    @Override
    @Transactional
    public void setWeekday(DayOfWeek weekday, List<OpenPeriod> periods, PersonId by) {
        jdbc.sql("delete from opening_hours where lab_id = :lab and weekday = :weekday")
                .param("lab", lab().value())
                .param("weekday", weekday.getValue())
                .update();
        for (OpenPeriod period : periods) {
            jdbc.sql(
                            "insert into opening_hours (lab_id, weekday, opens, closes) values (:lab, :weekday, :opens, :closes)")
                    .param("lab", lab().value())
                    .param("weekday", weekday.getValue())
                    .param("opens", period.opens())
                    .param("closes", period.closes())
                    .update();
        }
        trail.append(TrailEntry.of(lab(), "booking.opening-hours-changed", lab(), by, "Opening hours changed")
                .with("weekday", weekday)
                .with("periods", periods));
    }

    @Override
    @Transactional
    public void except(DayHours hours, PersonId by) {
        for (String table : List.of("opening_exception_periods", "opening_exceptions")) {
            jdbc.sql("delete from " + table + " where lab_id = :lab and lab_date = :day")
                    .param("lab", lab().value())
                    .param("day", hours.day())
                    .update();
        }
        jdbc.sql("insert into opening_exceptions (lab_id, lab_date, reason) values (:lab, :day, :reason)")
                .param("lab", lab().value())
                .param("day", hours.day())
                .param("reason", hours.note())
                .update();
        for (OpenPeriod period : hours.periods()) {
            jdbc.sql("insert into opening_exception_periods (lab_id, lab_date, opens, closes) "
                            + "values (:lab, :day, :opens, :closes)")
                    .param("lab", lab().value())
                    .param("day", hours.day())
                    .param("opens", period.opens())
                    .param("closes", period.closes())
                    .update();
        }
        trail.append(TrailEntry.of(lab(), "booking.opening-hours-changed", lab(), by, "Hours of a day: " + hours.note())
                .with("day", hours.day())
                .with("periods", hours.periods()));
    }

    private LabId lab() {
        return labs.theLab().id();
    }
}
