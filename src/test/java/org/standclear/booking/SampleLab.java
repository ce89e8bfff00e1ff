package org.standclear.booking;

import java.time.Duration;
import java.time.Instant;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.context.ApplicationContext;
import org.standclear.cell.CellRegister;
import org.standclear.cell.CellRegister.Decided;
import org.standclear.cell.CellRegister.NewProposal;
import org.standclear.cell.CellRegister.Proposed;
import org.standclear.cell.SampleCell;
import org.standclear.people.AuthorisationRegister;
import org.standclear.people.AuthorisationRegister.Grant;
import org.standclear.people.Duty;
import org.standclear.people.PeopleRegister;
import org.standclear.people.PeopleRegister.NewPerson;
import org.standclear.people.PeopleRegister.Password;
import org.standclear.people.Person;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.security.Role;
import org.standclear.testing.MovableClock;

/** People, cells and bookings for tests of any feature; every name is new, since tests share a database. */
public final class SampleLab {

    private final PeopleRegister people;
    private final AuthorisationRegister authorisations;
    private final CellRegister cells;
    private final BookingDesk desk;
    private final Person granter;

    /** A lab in the running application. */
    public SampleLab(ApplicationContext application) {
        people = application.getBean(PeopleRegister.class);
        authorisations = application.getBean(AuthorisationRegister.class);
        cells = application.getBean(CellRegister.class);
        desk = application.getBean(BookingDesk.class);
        granter = person("Ines Quarryvale", Role.INSTRUCTOR);
    }

    /** Somebody who cannot sign in. */
    public Person person(String printedName, Role... roles) {
        return person(printedName, new Password.Hashed("{never}"), roles);
    }

    /** Somebody with a password. */
    public Person person(String printedName, Password password, Role... roles) {
        PeopleRegister.Outcome added = people.add(new NewPerson(
                "p" + UUID.randomUUID().toString().replace("-", ""), printedName, Set.of(roles), password, null));
        if (added instanceof PeopleRegister.Outcome.Done done) {
            return done.person();
        }
        throw new AssertionError(added.toString());
    }

    /** A student who may operate and attend on every cell, for half a year around the start of the tests' clock. */
    public Person student(String printedName) {
        Person student = person(printedName, Role.STUDENT);
        authorise(student.id());
        return student;
    }

    /** A technician who may operate and attend on every cell. */
    public Person technician(String printedName) {
        Person technician = person(printedName, Role.TECHNICIAN);
        authorise(technician.id());
        return technician;
    }

    /** Both duties on every cell. */
    public void authorise(PersonId person) {
        for (Duty duty : Duty.values()) {
            authorise(person, duty, null, MovableClock.START.plus(Duration.ofDays(90)));
        }
    }

    /** One duty until an instant; on every cell when no cell is given. */
    public void authorise(PersonId person, Duty duty, @Nullable CellId cell, Instant until) {
        Instant from = MovableClock.START.minus(Duration.ofDays(90));
        var outcome =
                authorisations.grant(new Grant(person, duty, cell, from, until, "induction passed", granter.id()));
        if (!(outcome instanceof AuthorisationRegister.Outcome.Done)) {
            throw new AssertionError(outcome.toString());
        }
    }

    /** A cell in service whose slots begin so many minutes after the half hour. */
    public CellId cell(int offsetMinutes) {
        var proposed = (Proposed.Kept) cells.propose(new NewProposal(
                null, SampleCell.file(SampleCell.name(), 1), "new cell", PersonId.next(), offsetMinutes));
        var decided = cells.approve(proposed.proposal().id(), PersonId.next(), 0);
        return ((Decided.Done) decided).cell();
    }

    /** What the desk answers to somebody who books for themselves and needs an attendant. */
    public BookingDesk.Outcome book(CellId cell, String start, Person operator) {
        return book(cell, start, operator, null);
    }

    /** What the desk answers to somebody who books for themselves. */
    public BookingDesk.Outcome book(CellId cell, String start, Person operator, @Nullable Person attendant) {
        return desk.book(new MakeBooking(
                cell,
                Instant.parse(start),
                operator.id(),
                attendant == null ? null : attendant.id(),
                null,
                null,
                operator.id()));
    }

    /** A booking that has to succeed. */
    public Booking booked(CellId cell, String start, Person operator, @Nullable Person attendant) {
        BookingDesk.Outcome outcome = book(cell, start, operator, attendant);
        if (outcome instanceof BookingDesk.Outcome.Booked booked) {
            return booked.booking();
        }
        throw new AssertionError(outcome.toString());
    }
}
