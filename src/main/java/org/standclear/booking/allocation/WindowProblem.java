package org.standclear.booking.allocation;

import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;
import org.standclear.booking.CellFit;
import org.standclear.booking.Slot;
import org.standclear.booking.SlotCalendar;
import org.standclear.cell.Cell;
import org.standclear.cell.CellState;
import org.standclear.cell.Cells;
import org.standclear.core.allocation.Attendant;
import org.standclear.core.allocation.Bench;
import org.standclear.core.allocation.FreeSlot;
import org.standclear.core.allocation.Problem;
import org.standclear.core.allocation.Span;
import org.standclear.core.allocation.Times;
import org.standclear.core.allocation.Turn;
import org.standclear.core.allocation.Wish;
import org.standclear.core.allocation.Work;
import org.standclear.people.Assignment;
import org.standclear.people.Authorisations;
import org.standclear.people.Courses;
import org.standclear.people.Duty;
import org.standclear.people.Person;
import org.standclear.platform.ids.Id;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.time.LabTime;
import org.standclear.platform.time.SqlTime;

/** Gathers what a plan for a window is made from: free slots, requests, authorisations, what people are busy with. */
@Component
class WindowProblem {

    private final TurnRequests requests;
    private final SlotCalendar calendar;
    private final Cells cells;
    private final Authorisations authorisations;
    private final Courses courses;
    private final TurnWork work;
    private final CellFit fit;
    private final LabTime labTime;
    private final JdbcClient jdbc;

    WindowProblem(
            TurnRequests requests,
            SlotCalendar calendar,
            Cells cells,
            Authorisations authorisations,
            Courses courses,
            TurnWork work,
            CellFit fit,
            LabTime labTime,
            JdbcClient jdbc) {
        this.requests = requests;
        this.calendar = calendar;
        this.cells = cells;
        this.authorisations = authorisations;
        this.courses = courses;
        this.work = work;
        this.fit = fit;
        this.labTime = labTime;
        this.jdbc = jdbc;
    }

    /** A turn's id is the request's, a colon and its number from 0. */
    static String turnId(UUID request, int number) {
        return request + ":" + number;
    }

    /** What there is now; slots that have begun are past. */
    @Transactional(readOnly = true)
    public Problem of(Window window) {
        List<TurnRequest> asked = requests.of(window.id());
        Span all = span(window);
        CellFit.Offered offered = fit.offered();
        List<Bench> benches = benches(asked, all, offered);
        List<FreeSlot> slots = slots(window, benches);
        List<Turn> turns = new ArrayList<>();
        Map<String, Integer> owed = new HashMap<>();
        for (TurnRequest request : asked) {
            Assignment assignment = assignment(request);
            turns.addAll(turns(request, assignment, all, offered));
            if (assignment != null && request.turns() > 0) {
                int missing = assignment.minimumRuns() - standing(request);
                owed.put(request.operator().toString(), Math.max(0, Math.min(missing, request.turns())));
            }
        }
        List<Attendant> attendants = attendants(asked, all);
        return new Problem(benches, slots, attendants, turns, owed, busy(involved(asked, attendants), all), List.of());
    }

    Span span(Window window) {
        return new Span(startOf(window.firstDay()), startOf(window.lastDay().plusDays(1)));
    }

    private Instant startOf(LocalDate day) {
        return day.atStartOfDay(labTime.zone()).toInstant();
    }

    /** Cells that run; each says what it has and of whom it may be operated, as a turn asks for it. */
    private List<Bench> benches(List<TurnRequest> asked, Span all, CellFit.Offered offered) {
        var may = authorisations.ofAll(asked.stream().map(TurnRequest::operator).toList());
        List<Bench> benches = new ArrayList<>();
        for (Cell cell : cells.all()) {
            String tool = offered.tools().get(cell.id());
            if (tool == null || !cell.state().mayRun()) {
                continue;
            }
            Set<String> offers = new HashSet<>(offered.features().getOrDefault(cell.id(), Set.of()));
            may.forEach((person, authorised) -> {
                if (authorised.stream()
                        .anyMatch(one -> one.duty() == Duty.OPERATOR
                                && one.covers(cell.id(), all.from())
                                && one.covers(cell.id(), all.until().minusSeconds(1)))) {
                    offers.add(operatedBy(person));
                }
            });
            benches.add(new Bench(cell.id().toString(), Set.of(tool), tool, offers));
        }
        return benches;
    }

    static String operatedBy(PersonId person) {
        return "operated by " + person;
    }

    private List<FreeSlot> slots(Window window, List<Bench> benches) {
        Set<String> open = new HashSet<>();
        benches.forEach(bench -> open.add(bench.cell()));
        Instant now = labTime.now();
        List<FreeSlot> slots = new ArrayList<>();
        for (LocalDate day = window.firstDay(); !day.isAfter(window.lastDay()); day = day.plusDays(1)) {
            for (SlotCalendar.CellDay cellDay : calendar.day(day).cells()) {
                for (Slot slot : cellDay.free()) {
                    if (slot.start().isAfter(now) && open.contains(slot.cell().toString())) {
                        slots.add(new FreeSlot(slot.cell().toString(), new Span(slot.start(), slot.end())));
                    }
                }
            }
        }
        return slots;
    }

    private @Nullable Assignment assignment(TurnRequest request) {
        return request.assignment() == null
                ? null
                : courses.assignmentOf(request.operator(), request.assignment()).orElse(null);
    }

    private List<Turn> turns(TurnRequest request, @Nullable Assignment assignment, Span all, CellFit.Offered offered) {
        Instant until = assignment == null || assignment.due().isAfter(all.until()) ? all.until() : assignment.due();
        Span own = all.from().isBefore(until)
                ? new Span(all.from(), until)
                : Span.minutes(all.from().minusSeconds(60), 1);
        Times times = new Times(
                own,
                request.canCome(),
                request.wishes().stream().map(span -> new Wish(null, span)).toList());
        Work takes = work.of(request.operator(), request.tool(), assignment, offered);
        int makeUps = work.makeUps(request.operator());
        String partner = request.partner() == null ? null : request.partner().toString();
        List<Turn> turns = new ArrayList<>();
        for (int number = 0; number < request.turns(); number++) {
            turns.add(new Turn(
                    turnId(request.id(), number),
                    request.operator().toString(),
                    partner,
                    takes,
                    times,
                    number < makeUps || (request.makeUp() && number == 0),
                    null));
        }
        return turns;
    }

    /** Bookings for the assignment that stand or were held to the end. */
    private int standing(TurnRequest request) {
        return jdbc.sql("""
                select count(*) from bookings where operator_id = :operator and assignment_id = :assignment
                    and state not in ('CANCELLED', 'LATE_CANCELLED', 'MISSED', 'MOVED_BY_STAFF')""")
                .param("operator", request.operator().value())
                .param(
                        "assignment",
                        request.assignment() == null
                                ? null
                                : request.assignment().value())
                .query(Integer.class)
                .single();
    }

    /** Everybody who is authorised on a cell that runs; others than staff not where only staff attend. */
    private List<Attendant> attendants(List<TurnRequest> asked, Span all) {
        Map<String, List<Span>> free = new HashMap<>();
        asked.stream()
                .filter(TurnRequest::attends)
                .forEach(request -> free.put(request.operator().toString(), request.canCome()));
        Map<String, Set<String>> mayAt = new HashMap<>();
        Set<String> staff = new HashSet<>();
        for (Cell cell : cells.all()) {
            List<Person> now = authorisations.holders(Duty.ATTENDANT, cell.id(), all.from());
            Set<PersonId> still = new HashSet<>();
            authorisations
                    .holders(Duty.ATTENDANT, cell.id(), all.until().minusSeconds(1))
                    .forEach(person -> still.add(person.id()));
            for (Person person : now) {
                boolean may = cell.state() != CellState.RESTRICTED || person.isLabStaff();
                if (may && still.contains(person.id())) {
                    mayAt.computeIfAbsent(person.id().toString(), key -> new LinkedHashSet<>())
                            .add(cell.id().toString());
                }
                if (person.isLabStaff()) {
                    staff.add(person.id().toString());
                }
            }
        }
        return mayAt.entrySet().stream()
                .map(one -> new Attendant(
                        one.getKey(),
                        one.getValue(),
                        free.getOrDefault(one.getKey(), List.of()),
                        staff.contains(one.getKey())))
                .sorted(java.util.Comparator.comparing(Attendant::person))
                .toList();
    }

    private record Taken(String person, Span span) {}

    private static Set<UUID> involved(List<TurnRequest> asked, List<Attendant> attendants) {
        Set<UUID> people = new HashSet<>();
        for (TurnRequest request : asked) {
            PersonId partner = request.partner();
            people.add(request.operator().value());
            if (partner != null) {
                people.add(partner.value());
            }
        }
        attendants.forEach(one -> people.add(Id.parse(one.person())));
        return people;
    }

    /** By person, since claims have no index by time alone: the years before are not read. */
    private Map<String, List<Span>> busy(Set<UUID> people, Span all) {
        Map<String, List<Span>> busy = new HashMap<>();
        if (people.isEmpty()) {
            return busy;
        }
        jdbc.sql("""
                select subject, starts_at, ends_at from booking_claims
                where subject in (:people) and ends_at > :from and starts_at < :until and kind <> 'CELL'""")
                .param("people", people)
                .param("from", SqlTime.toSql(all.from()))
                .param("until", SqlTime.toSql(all.until()))
                .query((row, number) -> new Taken(
                        row.getObject("subject", UUID.class).toString(),
                        new Span(SqlTime.read(row, "starts_at"), SqlTime.read(row, "ends_at"))))
                .list()
                .forEach(taken -> busy.computeIfAbsent(taken.person(), key -> new ArrayList<>())
                        .add(taken.span()));
        return busy;
    }
}
