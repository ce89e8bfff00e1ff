package org.standclear.booking.fairness;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.UUID;
import java.util.stream.Collectors;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.standclear.booking.BookingState;
import org.standclear.booking.SlotCalendar;
import org.standclear.people.People;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.lab.Labs;
import org.standclear.platform.time.LabTime;
import org.standclear.platform.time.SqlTime;

/** Counts bookings, enrolments and plans together; a stretch of at most a term at a time. */
@Service
public class UseReport {

    private static final Duration LONGEST_WAIT = Duration.ofDays(181);

    private final JdbcClient jdbc;
    private final SlotCalendar calendar;
    private final People people;
    private final Labs labs;
    private final LabTime labTime;

    UseReport(JdbcClient jdbc, SlotCalendar calendar, People people, Labs labs, LabTime labTime) {
        this.jdbc = jdbc;
        this.calendar = calendar;
        this.people = people;
        this.labs = labs;
        this.labTime = labTime;
    }

    /** From the first day to the last, both included. */
    @Transactional(readOnly = true)
    public LabUse between(LocalDate first, LocalDate last) {
        Instant from = startOf(first);
        Instant until = startOf(last.plusDays(1));
        Map<PersonId, Counted> counted = counted(from, until);
        unmet(first, last)
                .forEach((person, turns) -> counted.computeIfAbsent(person, key -> new Counted()).unmet = turns);
        waited(from, until)
                .forEach((person, times) -> counted.computeIfAbsent(person, key -> new Counted()).waited = times);
        List<Enrolled> enrolled = enrolled();
        Map<PersonId, List<String>> sections = enrolled.stream()
                .collect(Collectors.groupingBy(
                        Enrolled::person, Collectors.mapping(Enrolled::section, Collectors.toList())));
        // who had none is what the page is for
        sections.keySet().forEach(person -> counted.computeIfAbsent(person, key -> new Counted()));
        Map<PersonId, String> names = names(enrolled, counted.keySet());
        List<PersonUse> each = new ArrayList<>();
        counted.forEach((person, one) -> each.add(
                one.use(person, names.getOrDefault(person, "unknown"), sections.getOrDefault(person, List.of()))));
        each.sort(java.util.Comparator.comparing(PersonUse::name)
                .thenComparing(one -> one.person().value()));
        int held = counted.values().stream().mapToInt(one -> one.slots).sum();
        return new LabUse(held, given(first, last), sectionUse(sections, counted), each);
    }

    private Instant startOf(LocalDate day) {
        return day.atStartOfDay(labTime.zone()).toInstant();
    }

    private static final class Counted {
        private int slots;
        private int missed;
        private int lateCancels;
        private int excused;
        private int unmet;
        private int waited;
        private Duration waits = Duration.ZERO;

        PersonUse use(PersonId person, String name, List<String> sections) {
            return new PersonUse(
                    person,
                    name,
                    String.join(", ", sections),
                    slots,
                    missed,
                    lateCancels,
                    excused,
                    unmet,
                    waited,
                    slots == 0 ? null : waits.dividedBy(slots));
        }

        void add(BookingState state, Duration ahead, boolean isExcused) {
            excused += isExcused ? 1 : 0;
            if (state.holdsItsSlot()) {
                slots++;
                waits = waits.plus(ahead.isNegative() ? Duration.ZERO : ahead);
            } else if (state == BookingState.MISSED) {
                missed++;
            } else if (state == BookingState.LATE_CANCELLED) {
                lateCancels++;
            }
        }
    }

    private record Row(PersonId operator, BookingState state, Duration ahead, boolean excused) {}

    private Map<PersonId, Counted> counted(Instant from, Instant until) {
        Map<PersonId, Counted> counted = new HashMap<>();
        // a slot ends within a day of its start; without that end, what came after the stretch would be read as well
        jdbc.sql("""
                select operator_id, state, starts_at, made_at,
                    exists (select 1 from booking_excuses e where e.booking_id = bookings.id) as excused from bookings
                where lab_id = :lab and ends_at > :from and ends_at < :farthest and starts_at < :until""")
                .param("farthest", SqlTime.toSql(until.plus(Duration.ofDays(1))))
                .param("lab", labs.theLab().id().value())
                .param("from", SqlTime.toSql(from))
                .param("until", SqlTime.toSql(until))
                .query((row, number) -> new Row(
                        new PersonId(row.getObject("operator_id", UUID.class)),
                        BookingState.valueOf(row.getString("state")),
                        Duration.between(SqlTime.read(row, "made_at"), SqlTime.read(row, "starts_at")),
                        row.getBoolean("excused")))
                .list()
                .forEach(row -> counted.computeIfAbsent(row.operator(), key -> new Counted())
                        .add(row.state(), row.ahead(), row.excused()));
        return counted;
    }

    private record Missing(PersonId operator, int turns) {}

    /** Turns that the accepted plans of windows in these days left out. */
    private Map<PersonId, Integer> unmet(LocalDate first, LocalDate last) {
        return jdbc
                .sql("""
                select l.operator_id, count(*) as turns from booking_left_out_turns l
                join booking_windows w on w.accepted_search = l.search_id
                where w.lab_id = :lab and w.first_day <= :last and w.last_day >= :first group by l.operator_id""")
                .param("lab", labs.theLab().id().value())
                .param("first", first)
                .param("last", last)
                .query((row, number) ->
                        new Missing(new PersonId(row.getObject("operator_id", UUID.class)), row.getInt("turns")))
                .list()
                .stream()
                .collect(Collectors.toMap(Missing::operator, Missing::turns));
    }

    /** Waits for times in these days that ended because the time was past. */
    private Map<PersonId, Integer> waited(Instant from, Instant until) {
        return jdbc
                .sql("""
                select person_id as operator_id, count(*) as turns from booking_waits
                where lab_id = :lab and ended_at >= :from and ended_at < :farthest and ended_how = 'PAST' and until_at > :from and from_at < :until
                group by person_id""")
                .param("lab", labs.theLab().id().value())
                .param("from", SqlTime.toSql(from))
                .param("until", SqlTime.toSql(until))
                // nobody waits for a time beyond the longest horizon
                .param("farthest", SqlTime.toSql(until.plus(LONGEST_WAIT)))
                .query((row, number) ->
                        new Missing(new PersonId(row.getObject("operator_id", UUID.class)), row.getInt("turns")))
                .list()
                .stream()
                .collect(Collectors.toMap(Missing::operator, Missing::turns));
    }

    private record Enrolled(PersonId person, String name, String section) {}

    private List<Enrolled> enrolled() {
        return jdbc.sql("""
                select e.person_id, p.printed_name, c.code as course_code, s.code from enrolments e
                join people p on p.id = e.person_id
                join sections s on s.id = e.section_id join courses c on c.id = s.course_id
                where c.lab_id = :lab order by c.code, s.code""")
                .param("lab", labs.theLab().id().value())
                .query((row, number) -> new Enrolled(
                        new PersonId(row.getObject("person_id", UUID.class)),
                        row.getString("printed_name"),
                        row.getString("course_code") + "-" + row.getString("code")))
                .list();
    }

    /** Of those enrolled as they were read: a lab may have tens of thousands, more than one question can name. */
    private Map<PersonId, String> names(List<Enrolled> enrolled, Set<PersonId> of) {
        Map<PersonId, String> names = new HashMap<>();
        enrolled.forEach(one -> names.put(one.person(), one.name()));
        Set<PersonId> others = new HashSet<>(of);
        others.removeAll(names.keySet());
        people.all(others).forEach((person, found) -> names.put(person, found.printedName()));
        return names;
    }

    private static List<SectionUse> sectionUse(Map<PersonId, List<String>> sections, Map<PersonId, Counted> counted) {
        TreeMap<String, List<Integer>> slots = new TreeMap<>();
        Map<String, Integer> unmet = new HashMap<>();
        sections.forEach((person, of) -> of.forEach(section -> {
            Counted one = counted.get(person);
            slots.computeIfAbsent(section, key -> new ArrayList<>()).add(one == null ? 0 : one.slots);
            unmet.merge(section, one == null ? 0 : one.unmet, Integer::sum);
        }));
        List<SectionUse> use = new ArrayList<>();
        slots.forEach((section, each) -> use.add(SectionUse.of(section, each, unmet.getOrDefault(section, 0))));
        return use;
    }

    /** Free and booked slots of cells that run. */
    private int given(LocalDate first, LocalDate last) {
        int given = 0;
        for (LocalDate day = first; !day.isAfter(last); day = day.plusDays(1)) {
            for (SlotCalendar.CellDay cell : calendar.day(day).cells()) {
                if (cell.cell().state().mayRun()) {
                    given += cell.free().size()
                            + (int) cell.bookings().stream()
                                    .filter(booking -> booking.state().holdsItsSlot())
                                    .count();
                }
            }
        }
        return given;
    }
}
