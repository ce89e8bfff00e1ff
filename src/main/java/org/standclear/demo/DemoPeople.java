package org.standclear.demo;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.springframework.context.annotation.Profile;
import org.springframework.stereotype.Component;
import org.standclear.demo.CoursesSeed.CourseSeed;
import org.standclear.people.AuthorisationRegister;
import org.standclear.people.AuthorisationRegister.Grant;
import org.standclear.people.CourseRegister;
import org.standclear.people.CourseRegister.NewAssignment;
import org.standclear.people.Duty;
import org.standclear.people.DutyRegister;
import org.standclear.people.People;
import org.standclear.people.PeopleRegister;
import org.standclear.people.PeopleRegister.NewPerson;
import org.standclear.people.PeopleRegister.Password;
import org.standclear.people.Person;
import org.standclear.people.SigningPins;
import org.standclear.platform.ids.AssignmentId;
import org.standclear.platform.ids.CourseId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.ids.SectionId;

/** Adds the people of the demo, what they study, what they may do and when they are on duty. */
@Component
@Profile("demo")
class DemoPeople {

    private static final Duration USUAL = Duration.ofDays(120);

    private final People known;
    private final PeopleRegister register;
    private final SigningPins pins;
    private final CourseRegister courses;
    private final AuthorisationRegister authorisations;
    private final DutyRegister duties;

    DemoPeople(
            People known,
            PeopleRegister register,
            SigningPins pins,
            CourseRegister courses,
            AuthorisationRegister authorisations,
            DutyRegister duties) {
        this.known = known;
        this.register = register;
        this.pins = pins;
        this.courses = courses;
        this.authorisations = authorisations;
        this.duties = duties;
    }

    /** Everybody shares one password and one PIN, hashed beforehand. Who has an account from another lab keeps it. */
    void addPeople(List<PersonSeed> people, LabSeed lab, Roster roster) {
        for (PersonSeed person : people) {
            roster.add(person, known.byLogin(person.login()).map(Person::id).orElseGet(() -> add(person, lab)));
        }
    }

    private PersonId add(PersonSeed person, LabSeed lab) {
        var added = register.add(new NewPerson(
                person.login(),
                person.printedName(),
                Set.of(person.asRole()),
                new Password.Hashed(lab.passwordHash()),
                null));
        PersonId id = Expect.that(PeopleRegister.Outcome.Done.class, added, "adding " + person.login())
                .person()
                .id();
        if (person.signs()) {
            pins.keepHashed(id, lab.pinHash());
        }
        return id;
    }

    void addCourses(CoursesSeed seed, WeekTimes times, Roster roster) {
        for (CourseSeed course : seed.courses()) {
            PersonId by = roster.person(course.by());
            CourseId id = id(courses.addCourse(course.code(), course.title(), by), course.code());
            Map<String, SectionId> sections = new HashMap<>();
            course.sections().forEach(code -> sections.put(code, id(courses.addSection(id, code, by), code)));
            AssignmentId assignment = assignment(course, id, sections, times, by);
            sections.forEach((code, section) ->
                    roster.addSection(course.code() + "-" + code, section, new Roster.Studies(id, assignment)));
        }
    }

    private @Nullable AssignmentId assignment(
            CourseSeed course, CourseId id, Map<String, SectionId> sections, WeekTimes times, PersonId by) {
        var seed = course.assignment();
        if (seed == null) {
            return null;
        }
        Map<SectionId, Instant> due = new HashMap<>();
        seed.due()
                .forEach((code, when) -> due.put(
                        sections.get(code), times.at(times.date(when.day()).plusWeeks(when.weeksAhead()), when.at())));
        return id(courses.addAssignment(new NewAssignment(id, seed.title(), seed.runs(), due, by)), seed.title());
    }

    void enrol(List<PersonSeed> people, Roster roster, PersonId by) {
        for (PersonSeed person : people) {
            if (!person.section().isEmpty()) {
                SectionId section = roster.section(person.section());
                id(courses.enrol(roster.person(person.login()), section, by), person.login());
            }
        }
    }

    /** From an instant on; {@code by} is the instructor who saw their tests. */
    void authorise(List<PersonSeed> people, LabSeed.Authorisations differing, Granting granting) {
        for (PersonSeed person : people) {
            if (person.signs() && !person.isAdministration()) {
                for (Duty duty : Duty.values()) {
                    var differs = differing.of(person.login(), duty);
                    if (differs.isEmpty()) {
                        grant(person, duty, granting, granting.from().plus(USUAL));
                    } else if (differs.get().daysLeft() != null) {
                        Duration left = Duration.ofDays(differs.get().daysLeft());
                        grant(person, duty, granting, granting.start().plus(left));
                    }
                }
            }
        }
    }

    /**
     * How authorisations are granted.
     *
     * @param start when the demo starts, from which days left are counted
     */
    record Granting(Roster roster, PersonId by, Instant from, Instant start) {}

    private void grant(PersonSeed person, Duty duty, Granting granting, Instant until) {
        String reason = person.note().isEmpty() ? "Induction and practical test passed" : "Induction passed";
        var outcome = authorisations.grant(new Grant(
                granting.roster().person(person.login()), duty, null, granting.from(), until, reason, granting.by()));
        Expect.that(AuthorisationRegister.Outcome.Done.class, outcome, "authorising " + person.login());
    }

    void planDuty(List<LabSeed.Period> periods, WeekTimes times, Roster roster, PersonId by) {
        for (LabSeed.Period period : periods) {
            for (WeekTimes.Day day : period.days()) {
                // the demo's past reaches back into the weeks before: the week's script early in the week, incidents
                // always
                LocalDate thisWeek = times.date(day);
                for (LocalDate date : List.of(thisWeek.minusWeeks(2), thisWeek.minusWeeks(1), thisWeek)) {
                    plan(
                            roster.person(period.who()),
                            times.at(date, period.from()),
                            times.at(date, period.until()),
                            by);
                }
            }
        }
    }

    /** Also around the start of the demo, at whatever hour that is. */
    void planOnCall(List<String> logins, WeekTimes times, Roster roster, PersonId by) {
        for (String login : logins) {
            plan(
                    roster.person(login),
                    times.start().minus(Duration.ofHours(1)),
                    times.start().plus(Duration.ofHours(8)),
                    by);
        }
    }

    private void plan(PersonId person, Instant from, Instant until, PersonId by) {
        Expect.that(DutyRegister.Outcome.Done.class, duties.plan(person, from, until, by), "planning duty");
    }

    private static <T> T id(CourseRegister.Outcome<T> outcome, String what) {
        if (outcome instanceof CourseRegister.Outcome.Done<T> done) {
            return done.id();
        }
        throw new IllegalStateException("the demo's script: " + what + " came out as " + outcome);
    }
}
