package org.standclear.booking;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.TreeMap;
import java.util.stream.Stream;
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

    private static final String CHANGED = "booking.opening-hours-changed";

    private final JdbcClient jdbc;
    private final Labs labs;
    private final Trail trail;
    private final ShortMemory<Stored> memory = new ShortMemory<>(this::stored);

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
        if (labs.theLab().closed()) {
            return first.datesUntil(last.plusDays(1))
                    .map(day -> new DayHours(day, List.of(), "This lab is closed."))
                    .toList();
        }
        Stored stored = memory.get();
        return first.datesUntil(last.plusDays(1)).map(stored::on).toList();
    }

    @Override
    public Map<DayOfWeek, List<OpenPeriod>> week() {
        return memory.get().week();
    }

    @Override
    public List<DayHours> exceptions(LocalDate from) {
        return memory.get().days().tailMap(from, true).values().stream().toList();
    }

    /** All there is; a college has some twenty days a year with hours of their own. */
    private record Stored(Map<DayOfWeek, List<OpenPeriod>> week, NavigableMap<LocalDate, DayHours> days) {

        DayHours on(LocalDate day) {
            DayHours own = days.get(day);
            return own != null ? own : new DayHours(day, week.getOrDefault(day.getDayOfWeek(), List.of()), "");
        }
    }

    private Stored stored() {
        return new Stored(storedWeek(), storedDays());
    }

    private Map<DayOfWeek, List<OpenPeriod>> storedWeek() {
        Map<DayOfWeek, List<OpenPeriod>> week = new TreeMap<>();
        jdbc.sql("select weekday, opens, closes from opening_hours where lab_id = :lab order by weekday, opens")
                .param("lab", lab().value())
                .query((row, number) -> week.computeIfAbsent(
                                DayOfWeek.of(row.getInt("weekday")), unknown -> new ArrayList<>())
                        .add(new OpenPeriod(
                                row.getObject("opens", LocalTime.class), row.getObject("closes", LocalTime.class))))
                .list();
        week.replaceAll((weekday, periods) -> List.copyOf(periods));
        return Collections.unmodifiableMap(week);
    }

    private NavigableMap<LocalDate, DayHours> storedDays() {
        NavigableMap<LocalDate, DayHours> days = new TreeMap<>();
        jdbc.sql("""
                select e.lab_date, e.reason, p.opens, p.closes
                from opening_exceptions e
                left join opening_exception_periods p on p.lab_id = e.lab_id and p.lab_date = e.lab_date
                where e.lab_id = :lab order by e.lab_date, p.opens""")
                .param("lab", lab().value())
                .query((row, number) -> {
                    LocalTime opens = row.getObject("opens", LocalTime.class);
                    LocalTime closes = row.getObject("closes", LocalTime.class);
                    return days.merge(
                            row.getObject("lab_date", LocalDate.class),
                            new DayHours(
                                    row.getObject("lab_date", LocalDate.class),
                                    opens == null ? List.of() : List.of(new OpenPeriod(opens, closes)),
                                    row.getString("reason")),
                            JdbcOpeningHours::both);
                })
                .list();
        return Collections.unmodifiableNavigableMap(days);
    }

    private static DayHours both(DayHours one, DayHours other) {
        return new DayHours(
                one.day(),
                Stream.concat(one.periods().stream(), other.periods().stream()).toList(),
                one.note());
    }

    @Override
    @Transactional
    public void setWeekday(DayOfWeek weekday, List<OpenPeriod> periods, PersonId by) {
        store(weekday, periods);
        trail.append(TrailEntry.of(lab(), CHANGED, lab(), by, "Opening hours changed")
                .with("weekday", weekday)
                .with("periods", periods));
    }

    @Override
    @Transactional
    public void setWeek(Map<DayOfWeek, List<OpenPeriod>> week, PersonId by, String reason) {
        Map<DayOfWeek, List<OpenPeriod>> before = storedWeek();
        for (DayOfWeek weekday : DayOfWeek.values()) {
            store(weekday, week.getOrDefault(weekday, List.of()));
        }
        trail.append(TrailEntry.of(lab(), CHANGED, lab(), by, "Opening hours changed: " + reason)
                .with("before", before)
                .with("after", week));
    }

    private void store(DayOfWeek weekday, List<OpenPeriod> periods) {
        memory.forget();
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
    }

    @Override
    @Transactional
    public void asEveryWeek(LocalDate day, PersonId by) {
        takeAway(day);
        trail.append(TrailEntry.of(lab(), CHANGED, lab(), by, "Hours as every week again")
                .with("day", day));
    }

    @Override
    @Transactional
    public void except(DayHours hours, PersonId by) {
        takeAway(hours.day());
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
        trail.append(TrailEntry.of(lab(), CHANGED, lab(), by, "Hours of a day: " + hours.note())
                .with("day", hours.day())
                .with("periods", hours.periods()));
    }

    private void takeAway(LocalDate day) {
        memory.forget();
        for (String table : List.of("opening_exception_periods", "opening_exceptions")) {
            jdbc.sql("delete from " + table + " where lab_id = :lab and lab_date = :day")
                    .param("lab", lab().value())
                    .param("day", day)
                    .update();
        }
    }

    private LabId lab() {
        return labs.theLab().id();
    }
}
