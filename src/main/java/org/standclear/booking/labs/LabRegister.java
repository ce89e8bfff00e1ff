package org.standclear.booking.labs;

import java.time.Clock;
import java.time.DayOfWeek;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.standclear.booking.LabMaker;
import org.standclear.booking.OpenPeriod;
import org.standclear.booking.OpeningHours;
import org.standclear.people.People;
import org.standclear.people.PeopleRegister;
import org.standclear.people.Person;
import org.standclear.platform.ids.LabId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.lab.Lab;
import org.standclear.platform.lab.LabScope;
import org.standclear.platform.lab.Labs;
import org.standclear.platform.lab.LooseEnds;
import org.standclear.platform.lab.LooseEnds.LooseEnd;
import org.standclear.platform.security.Role;
import org.standclear.platform.text.PlainText;
import org.standclear.trail.Trail;
import org.standclear.trail.TrailEntry;

/** Makes labs, appoints their staff, and takes labs out of use; the caller has checked that an administrator asks. */
@Service
@Transactional
public class LabRegister implements LabMaker {

    private static final int LONGEST_REASON = 400;

    private final JdbcClient jdbc;
    private final Labs labs;
    private final OpeningHours hours;
    private final People people;
    private final PeopleRegister register;
    private final List<LooseEnds> rooms;
    private final Trail trail;
    private final Clock clock;

    LabRegister(
            JdbcClient jdbc,
            Labs labs,
            OpeningHours hours,
            People people,
            PeopleRegister register,
            List<LooseEnds> rooms,
            Trail trail,
            Clock clock) {
        this.jdbc = jdbc;
        this.labs = labs;
        this.hours = hours;
        this.people = people;
        this.register = register;
        this.rooms = List.copyOf(rooms);
        this.trail = trail;
        this.clock = clock;
    }

    /** What came of it. */
    public sealed interface Outcome {

        /** It is stored. */
        record Done(LabId lab) implements Outcome {}

        /** Nothing was stored; says why, and for which field. */
        record Refused(String field, String says) implements Outcome {}
    }

    /** A lab with how much there is of it. */
    public record Line(Lab lab, int cells, int people) {}

    /** All labs, oldest first. */
    @Transactional(readOnly = true)
    public List<Line> all() {
        return labs.all().stream()
                .map(lab -> new Line(
                        lab,
                        count("select count(*) from cells where lab_id = :lab", lab.id()),
                        count("select count(distinct person_id) from person_roles where lab_id = :lab", lab.id())))
                .toList();
    }

    private int count(String sql, LabId lab) {
        return jdbc.sql(sql).param("lab", lab.value()).query(Integer.class).single();
    }

    /** Makes a lab that opens from Monday to Friday; the first of its staff, when one is named, has an account. */
    public Outcome make(Lab lab, List<OpenPeriod> weekday, String firstStaff, Role firstRole, PersonId by) {
        boolean taken = labs.all().stream()
                .anyMatch(other -> !other.closed() && other.name().equalsIgnoreCase(lab.name()));
        if (taken) {
            return new Outcome.Refused("name", "There is a lab of that name already.");
        }
        Optional<Person> staff = people.byLogin(firstStaff).filter(Person::active);
        if (!firstStaff.isBlank() && staff.isEmpty()) {
            return new Outcome.Refused("login", "Nobody with an open account has that sign-in name.");
        }
        labs.add(lab);
        return LabScope.in(lab.id(), () -> {
            Map<DayOfWeek, List<OpenPeriod>> week = EnumSet.range(DayOfWeek.MONDAY, DayOfWeek.FRIDAY).stream()
                    .collect(Collectors.toMap(day -> day, day -> weekday));
            trail.append(
                    TrailEntry.of(lab.id(), "people.lab-made", lab.id(), by, "The lab " + lab.name() + " was made.")
                            .with("zone", lab.zone())
                            .with("room", lab.room()));
            hours.setWeek(week, by, "the lab's first hours");
            Outcome made = new Outcome.Done(lab.id());
            return staff.map(person -> appoint(lab.id(), person.login(), Set.of(firstRole), by))
                    .orElse(made);
        });
    }

    @Override
    public LabId make(Lab lab, List<OpenPeriod> weekday, PersonId by) {
        if (make(lab, weekday, "", Role.TECHNICIAN, by) instanceof Outcome.Refused refused) {
            throw new IllegalStateException(refused.says());
        }
        return lab.id();
    }

    /** Gives somebody with an account these roles in the lab, beside what they have there. */
    public Outcome appoint(LabId lab, String login, Set<Role> roles, PersonId by) {
        return LabScope.in(lab, () -> {
            Optional<Person> person = people.byLogin(login).filter(Person::active);
            if (person.isEmpty()) {
                return new Outcome.Refused("login", "Nobody with an open account has that sign-in name.");
            }
            if (roles.contains(Role.ADMINISTRATOR)) {
                return new Outcome.Refused(
                        "roles", "An administrator is one in every lab; that is given on the person's page.");
            }
            if (roles.contains(Role.BENCH)) {
                return new Outcome.Refused("roles", "A bench screen belongs to one lab: make an account for it there.");
            }
            PeopleRegister.Outcome outcome = register.appoint(person.get().id(), roles, by);
            return outcome instanceof PeopleRegister.Outcome.Refused refused
                    ? new Outcome.Refused(refused.field(), refused.says())
                    : new Outcome.Done(lab);
        });
    }

    /** What has to be settled in the lab before it can be taken out of use. */
    @Transactional(readOnly = true)
    public List<LooseEnd> looseEnds(LabId lab) {
        return rooms.stream().flatMap(room -> room.of(lab).stream()).toList();
    }

    /** Takes a lab out of use, unless something is not settled in it or it is the last one. */
    public Outcome close(LabId id, String reason, PersonId by) {
        if (PlainText.check(reason, LONGEST_REASON) instanceof PlainText.Refused refused) {
            return new Outcome.Refused("reason", refused.says());
        }
        labs.lockAll();
        Lab lab = labs.find(id).orElseThrow();
        if (lab.closed()) {
            return new Outcome.Done(id);
        }
        if (count("select count(*) from labs where closed_at is null and id <> :lab", id) == 0) {
            return new Outcome.Refused("reason", "This is the only lab in use. Make another one first.");
        }
        List<LooseEnd> open = looseEnds(id);
        if (!open.isEmpty()) {
            return new Outcome.Refused(
                    "",
                    open.get(0).says()
                            + (open.size() == 1
                                    ? ""
                                    : " That is one of " + open.size() + " things to settle in this lab first."));
        }
        labs.setClosed(id, clock.instant());
        tell(id, "people.lab-closed", by, "The lab " + lab.name() + " was taken out of use: " + text(reason));
        return new Outcome.Done(id);
    }

    /** Takes a closed lab into use again. */
    public Outcome open(LabId id, PersonId by) {
        Lab lab = labs.find(id).orElseThrow();
        if (lab.closed()) {
            labs.setClosed(id, null);
            tell(id, "people.lab-opened", by, "The lab " + lab.name() + " is in use again.");
        }
        return new Outcome.Done(id);
    }

    private void tell(LabId lab, String kind, PersonId by, String words) {
        trail.append(TrailEntry.of(lab, kind, lab, by, words));
    }

    private static String text(String raw) {
        return ((PlainText.Fine) PlainText.check(raw, LONGEST_REASON)).text();
    }
}
