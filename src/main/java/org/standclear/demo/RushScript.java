package org.standclear.demo;

import java.time.LocalDate;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.context.annotation.Profile;
import org.springframework.stereotype.Component;
import org.standclear.booking.OpenPeriod;
import org.standclear.booking.OpeningHours;
import org.standclear.booking.OpeningHours.DayHours;
import org.standclear.booking.SharedWindows;
import org.standclear.booking.SharedWindows.Stretch;
import org.standclear.booking.SharedWindows.Wanted;
import org.standclear.people.CourseRegister;
import org.standclear.people.CourseRegister.NewAssignment;
import org.standclear.platform.ids.AssignmentId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.ids.SectionId;

/**
 * Rush Thursday, the week after the demo's: a short day of 27 slots, an assignment due that day in all three sections of
 * RBT 110, and 41 requests, to be staggered and shared out by whoever plays.
 */
@Component
@Profile("demo")
class RushScript {

    private static final int REQUESTS = 41;
    private static final int RUNS = 3;
    private static final String COURSE = "RBT 110-";
    private static final List<String> TOOLS = List.of("G-02", "V-02", "S-03", "G-02", "V-02", "V-01");
    private static final LocalTime OPENS = LocalTime.of(9, 0);
    private static final LocalTime MIDDLE = LocalTime.of(11, 0);
    private static final LocalTime CLOSES = LocalTime.of(12, 45);

    private final OpeningHours hours;
    private final CourseRegister courses;
    private final SharedWindows windows;

    RushScript(OpeningHours hours, CourseRegister courses, SharedWindows windows) {
        this.hours = hours;
        this.courses = courses;
        this.windows = windows;
    }

    void write(List<PersonSeed> everybody, WeekSeed week, WeekTimes times, Roster roster) {
        LocalDate thursday = times.monday().plusDays(10);
        PersonId ines = roster.person("ines");
        hours.except(
                new DayHours(thursday, List.of(new OpenPeriod(OPENS, CLOSES)), "staff meeting in the afternoon"), ines);
        AssignmentId assignment = assignment(times, thursday, roster, ines);
        UUID window = windows.open(
                "Rush Thursday", thursday, thursday, times.at(thursday.minusDays(1), LocalTime.of(18, 0)), ines);
        Map<String, String> partners = partners(week);
        List<PersonSeed> asking = everybody.stream()
                .filter(person -> person.section().startsWith(COURSE))
                .limit(REQUESTS)
                .toList();
        for (int number = 0; number < asking.size(); number++) {
            PersonSeed person = asking.get(number);
            String partner = partners.get(person.login());
            String tool = TOOLS.get(number % TOOLS.size());
            windows.ask(
                    window,
                    new Wanted(
                            roster.person(person.login()),
                            partner(tool, partner, roster),
                            assignment,
                            tool,
                            1,
                            false,
                            stretches(number / TOOLS.size(), times, thursday)));
        }
        for (String attendant : List.of("tal", "adaeze")) {
            windows.ask(
                    window,
                    new Wanted(
                            roster.person(attendant),
                            null,
                            null,
                            TOOLS.get(0),
                            0,
                            true,
                            List.of(new Stretch(times.at(thursday, OPENS), times.at(thursday, CLOSES)))));
        }
    }

    private AssignmentId assignment(WeekTimes times, LocalDate thursday, Roster roster, PersonId by) {
        Map<SectionId, java.time.Instant> due = new HashMap<>();
        for (String section : List.of("01", "02", "03")) {
            due.put(roster.section(COURSE + section), times.at(thursday, LocalTime.of(18, 0)));
        }
        var course = java.util.Objects.requireNonNull(roster.studies(roster.person("noor")))
                .course();
        var added = courses.addAssignment(new NewAssignment(course, "Sorting run", RUNS, due, by));
        return ((CourseRegister.Outcome.Done<AssignmentId>) added).id();
    }

    /** Where only staff attend, nobody brings a partner. */
    private static @Nullable PersonId partner(String tool, @Nullable String partner, Roster roster) {
        return partner == null || tool.equals("S-03") ? null : roster.person(partner);
    }

    /** Who stood at whose e-stop in the demo's week. */
    private static Map<String, String> partners(WeekSeed week) {
        Map<String, String> partners = new LinkedHashMap<>();
        week.bookings().forEach(booking -> {
            partners.putIfAbsent(booking.operator(), booking.attendant());
            partners.putIfAbsent(booking.attendant(), booking.operator());
        });
        week.now().forEach(now -> {
            partners.put(now.operator(), now.attendant());
            partners.put(now.attendant(), now.operator());
        });
        List.of("ines", "adaeze", "hemi", "tomasz", "tal").forEach(staff -> {
            partners.remove(staff);
            partners.values().removeIf(staff::equals);
        });
        return partners;
    }

    /** Some can come all morning, some only early, some only late; of each tool some of each. */
    private static List<Stretch> stretches(int number, WeekTimes times, LocalDate day) {
        List<Stretch> stretches = new ArrayList<>();
        if (number % 3 != 2) {
            stretches.add(new Stretch(times.at(day, OPENS), times.at(day, MIDDLE)));
        }
        if (number % 3 != 1) {
            stretches.add(new Stretch(times.at(day, MIDDLE), times.at(day, CLOSES)));
        }
        return stretches;
    }
}
