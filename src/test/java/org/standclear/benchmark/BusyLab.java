package org.standclear.benchmark;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import org.springframework.context.ApplicationContext;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.standclear.booking.Slot;
import org.standclear.booking.SlotCalendar;
import org.standclear.people.AuthorisationRegister;
import org.standclear.people.AuthorisationRegister.Grant;
import org.standclear.people.Duty;
import org.standclear.people.PeopleRegister;
import org.standclear.people.PeopleRegister.NewPerson;
import org.standclear.people.PeopleRegister.Password;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.lab.Labs;
import org.standclear.platform.security.Role;
import org.standclear.platform.time.LabTime;
import org.standclear.platform.time.SqlTime;

/** A lab with four cells, many authorised people and half a year of slots, whose quota lets everybody book. */
final class BusyLab {

    private static final int CELLS = 4;
    private static final int HORIZON_DAYS = 180;

    private final ApplicationContext application;
    private final JdbcClient jdbc;
    private final Instant now;
    private final PersonId instructor;
    private final List<PersonId> people = new ArrayList<>();
    private final List<List<Slot>> slots = new ArrayList<>();

    BusyLab(ApplicationContext application, int size) {
        this.application = application;
        jdbc = application.getBean(JdbcClient.class);
        now = application.getBean(Clock.class).instant();
        instructor = add("Instructor", Role.INSTRUCTOR);
        for (int i = 0; i < size; i++) {
            people.add(authorised("Student " + i));
        }
        openUp();
        addCells();
        findSlots();
    }

    /** The n-th of the authorised people. */
    PersonId person(int n) {
        return people.get(n);
    }

    /** The n-th free slot of a cell; each is handed out once by who counts. */
    Slot slot(int cell, int n) {
        return slots.get(cell % CELLS).get(n);
    }

    private PersonId add(String name, Role role) {
        String login = "p" + UUID.randomUUID().toString().replace("-", "");
        var added = application
                .getBean(PeopleRegister.class)
                .add(new NewPerson(login, name, Set.of(role), new Password.Hashed("{never}"), null));
        if (added instanceof PeopleRegister.Outcome.Done done) {
            return done.person().id();
        }
        throw new IllegalStateException(added.toString());
    }

    private PersonId authorised(String name) {
        PersonId person = add(name, Role.STUDENT);
        for (Duty duty : Duty.values()) {
            var granted = application
                    .getBean(AuthorisationRegister.class)
                    .grant(new Grant(
                            person,
                            duty,
                            null,
                            now.minus(Duration.ofDays(1)),
                            now.plus(Duration.ofDays(HORIZON_DAYS + 2)),
                            "induction",
                            instructor));
            if (granted instanceof AuthorisationRegister.Outcome.Refused refused) {
                throw new IllegalStateException(refused.says());
            }
        }
        return person;
    }

    private UUID lab() {
        return application.getBean(Labs.class).theLab().id().value();
    }

    private void openUp() {
        jdbc.sql("""
                insert into booking_settings (lab_id, number, slot_minutes, horizon_days, future_per_person,
                    week_per_person, per_assignment, late_release_hours, late_cancel_minutes, check_in_opens_minutes,
                    grace_minutes, changed_by, changed_at, reason)
                values (:lab, 1, 30, :horizon, 100000, 100000, 100000, 0, 120, 10, 6, :by, :at, 'measuring')""")
                .param("lab", lab())
                .param("horizon", HORIZON_DAYS)
                .param("by", instructor.value())
                .param("at", SqlTime.toSql(now))
                .update();
    }

    private void addCells() {
        for (int i = 0; i < CELLS; i++) {
            jdbc.sql("""
                    insert into cells (id, lab_id, name, state, state_reason, current_version, start_offset_minutes)
                    values (:id, :lab, :name, 'IN_SERVICE', '', 1, :offset)""")
                    .param("id", CellId.next().value())
                    .param("lab", lab())
                    .param("name", "Cell " + i)
                    .param("offset", 7 * i)
                    .update();
        }
    }

    private void findSlots() {
        SlotCalendar calendar = application.getBean(SlotCalendar.class);
        Map<String, List<Slot>> byCell = new LinkedHashMap<>();
        LocalDate today = application.getBean(LabTime.class).today();
        for (LocalDate day = today.plusDays(1); !day.isAfter(calendar.lastDay()); day = day.plusDays(1)) {
            calendar.day(day)
                    .cells()
                    .forEach(cell -> byCell.computeIfAbsent(cell.cell().name(), name -> new ArrayList<>())
                            .addAll(cell.free()));
        }
        slots.addAll(byCell.values());
    }
}
