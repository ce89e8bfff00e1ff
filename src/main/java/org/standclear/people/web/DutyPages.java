package org.standclear.people.web;

import jakarta.servlet.http.HttpServletResponse;
import java.time.DayOfWeek;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.temporal.TemporalAdjusters;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.standclear.people.DutyRegister;
import org.standclear.people.DutyRegister.Outcome;
import org.standclear.people.DutyRegister.Period;
import org.standclear.people.People;
import org.standclear.people.Person;
import org.standclear.platform.forms.PostOnce;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.security.Role;
import org.standclear.platform.security.SignedInPerson;
import org.standclear.platform.time.LabTime;
import org.standclear.platform.web.NotFoundException;

/** The duty plan of a week. */
@Controller
class DutyPages {

    private final DutyRegister register;
    private final People people;
    private final LabTime labTime;
    private final PostOnce postOnce;

    DutyPages(DutyRegister register, People people, LabTime labTime, PostOnce postOnce) {
        this.register = register;
        this.people = people;
        this.labTime = labTime;
        this.postOnce = postOnce;
    }

    @GetMapping("/people/duty")
    String week(@RequestParam Map<String, String> parameters, Model model) {
        Typed asked = new Typed(parameters);
        LocalDate day = parameters.containsKey("week") ? asked.date("week") : null;
        return page(day == null ? labTime.today() : day, new Typed(plain()), model);
    }

    private Map<String, String> plain() {
        return Map.of("day", labTime.today().toString(), "from", "08:00", "until", "17:00");
    }

    @PostMapping("/people/duty")
    String plan(
            @RequestParam Map<String, String> values,
            @AuthenticationPrincipal SignedInPerson me,
            HttpServletResponse response,
            Model model) {
        Typed typed = new Typed(values);
        LocalDate day = typed.date("day");
        PersonId person = person(typed);
        Instant from = instant(typed, "from", day);
        Instant until = instant(typed, "until", day);
        Optional<String> done = person == null || from == null || until == null || day == null
                ? Optional.empty()
                : postOnce.run(typed.raw("formToken"), () -> {
                    if (register.plan(person, from, until, me.id()) instanceof Outcome.Refused refused) {
                        typed.refuse(refused.field(), refused.says());
                        return null;
                    }
                    return "/people/duty?week=" + day;
                });
        if (done.isPresent()) {
            return "redirect:" + done.get();
        }
        response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
        return page(day == null ? labTime.today() : day, typed, model);
    }

    @PostMapping("/people/duty/{period}/remove")
    String remove(
            @PathVariable UUID period,
            @RequestParam Map<String, String> values,
            @AuthenticationPrincipal SignedInPerson me) {
        Typed typed = new Typed(values);
        LocalDate week = typed.date("week");
        return postOnce.run(
                        typed.raw("formToken"),
                        () -> register.remove(period, me.id()) instanceof Outcome.Refused
                                ? null
                                : "/people/duty" + (week == null ? "" : "?week=" + week))
                .map(location -> "redirect:" + location)
                .orElseThrow(() -> new NotFoundException("duty"));
    }

    private @Nullable PersonId person(Typed typed) {
        Optional<Person> chosen = staff().filter(
                        person -> person.id().toString().equals(typed.raw("person")))
                .findFirst();
        if (chosen.isEmpty()) {
            typed.refuse("person", "Choose a technician or an instructor.");
        }
        return chosen.map(Person::id).orElse(null);
    }

    private Stream<Person> staff() {
        return Stream.concat(people.with(Role.TECHNICIAN).stream(), people.with(Role.INSTRUCTOR).stream())
                .distinct();
    }

    private @Nullable Instant instant(Typed typed, String field, @Nullable LocalDate day) {
        LocalTime time = typed.time(field);
        if (time == null || day == null) {
            return null;
        }
        if (labTime.zone().getRules().getValidOffsets(day.atTime(time)).isEmpty()) {
            typed.refuse(field, "The clocks go forward over that time on that day. Choose another.");
            return null;
        }
        return day.atTime(time).atZone(labTime.zone()).toInstant();
    }

    private String page(LocalDate day, Typed typed, Model model) {
        LocalDate monday = day.with(TemporalAdjusters.previousOrSame(DayOfWeek.MONDAY));
        Map<String, String> staff = new LinkedHashMap<>();
        staff.put("", "choose");
        staff().forEach(person ->
                staff.put(person.id().toString(), person.printedName() + ", " + RoleChoices.words(person.roles())));
        List<Day> days = Stream.iterate(monday, d -> d.plusDays(1))
                .limit(7)
                .map(this::day)
                .toList();
        model.addAttribute("days", days);
        model.addAttribute(
                "ownPlans",
                days.stream()
                        .flatMap(d -> d.periods().stream())
                        .map(Entry::period)
                        .filter(Period::plannedByThemselves)
                        .map(Period::id)
                        .distinct()
                        .count());
        model.addAttribute("week", labTime.day(monday) + " to " + labTime.day(monday.plusDays(6)));
        model.addAttribute("monday", monday);
        model.addAttribute("staff", staff);
        model.addAttribute("typed", typed);
        model.addAttribute("errors", typed.errors());
        return "people/duty";
    }

    private Day day(LocalDate date) {
        Instant from = date.atStartOfDay(labTime.zone()).toInstant();
        Instant until = date.plusDays(1).atStartOfDay(labTime.zone()).toInstant();
        return new Day(
                labTime.day(date),
                date.equals(labTime.today()),
                date.isBefore(labTime.today()),
                register.between(from, until).stream()
                        .map(period -> new Entry(period, words(period)))
                        .toList());
    }

    private String words(Period period) {
        return labTime.times(period.from(), period.until());
    }

    /** A day of the plan. */
    record Day(String name, boolean today, boolean past, List<Entry> periods) {}

    /** Somebody's time on it. */
    record Entry(Period period, String words) {}
}
