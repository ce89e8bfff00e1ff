package org.standclear.booking.fairness;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.UUID;
import java.util.stream.Collectors;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.standclear.booking.BookingState;
import org.standclear.booking.SlotCalendar;
import org.standclear.people.People;
import org.standclear.people.Person;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.lab.Labs;
import org.standclear.platform.time.LabTime;
import org.standclear.platform.time.SqlTime;

/** Counts bookings, enrolments and plans together; a stretch of at most a term at a time. */
@Service
public class UseReport {

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
        Map<PersonId, List<String>> sections = sections();
        Map<PersonId, Person> named = people.all(counted.keySet());
        List<PersonUse> each = new ArrayList<>();
        counted.forEach((person, one) -> each.add(new PersonUse(
                person,
                named.containsKey(person) ? named.get(person).printedName() : "unknown",
                String.join(", ", sections.getOrDefault(person, List.of())),
                one.slots,
                one.missed,
                one.lateCancels,
                one.unmet,
                one.slots == 0 ? Duration.ZERO : one.waits.dividedBy(one.slots))));
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
        private int unmet;
        private Duration waits = Duration.ZERO;

        void add(BookingState state, Duration ahead) {
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

    private record Row(PersonId operator, BookingState state, Duration ahead) {}

    private Map<PersonId, Counted> counted(Instant from, Instant until) {
        Map<PersonId, Counted> counted = new HashMap<>();
        // a slot ends within a day of its start; without that end, what came after the stretch would be read as well
        jdbc.sql("""
                select operator_id, state, starts_at, made_at from bookings
                where lab_id = :lab and ends_at > :from and ends_at < :farthest and starts_at < :until""")
                .param("farthest", SqlTime.toSql(until.plus(Duration.ofDays(1))))
                .param("lab", labs.theLab().id().value())
                .param("from", SqlTime.toSql(from))
                .param("until", SqlTime.toSql(until))
                .query((row, number) -> new Row(
                        new PersonId(row.getObject("operator_id", UUID.class)),
                        BookingState.valueOf(row.getString("state")),
                        Duration.between(SqlTime.read(row, "made_at"), SqlTime.read(row, "starts_at"))))
                .list()
                .forEach(row -> counted.computeIfAbsent(row.operator(), key -> new Counted())
                        .add(row.state(), row.ahead()));
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

    private record Enrolled(PersonId person, String section) {}

    private Map<PersonId, List<String>> sections() {
        return jdbc
                .sql("""
                select e.person_id, c.code as course_code, s.code from enrolments e
                join sections s on s.id = e.section_id join courses c on c.id = s.course_id
                where c.lab_id = :lab order by c.code, s.code""")
                .param("lab", labs.theLab().id().value())
                .query((row, number) -> new Enrolled(
                        new PersonId(row.getObject("person_id", UUID.class)),
                        row.getString("course_code") + "-" + row.getString("code")))
                .list()
                .stream()
                .collect(Collectors.groupingBy(
                        Enrolled::person, Collectors.mapping(Enrolled::section, Collectors.toList())));
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
