package org.standclear.story;

import java.time.Duration;
import org.springframework.context.ApplicationContext;
import org.springframework.security.crypto.password.PasswordEncoder;
import org.standclear.booking.SampleLab;
import org.standclear.booking.SecondLab;
import org.standclear.cell.Cells;
import org.standclear.cell.DayTests;
import org.standclear.cell.SampleCell;
import org.standclear.people.DutyRegister;
import org.standclear.people.PeopleRegister.Password;
import org.standclear.people.Person;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.LabId;
import org.standclear.platform.lab.LabScope;
import org.standclear.platform.security.Role;
import org.standclear.program.Programs;
import org.standclear.program.Revision;
import org.standclear.testing.MovableClock;

/**
 * The people of a story, with passwords, and the cell they meet at, all of them new and in a lab of their own: what the
 * tests before them left in another lab is on none of their pages. The thread works for that lab until this is closed.
 */
final class StoryPeople implements AutoCloseable {

    static final String PASSWORD = "a long story at the bench";

    final Person noor;
    final Person mateo;
    final Person adaeze;
    final Person ines;
    final CellId cell;
    final String cellName;

    final LabId lab;

    private final ApplicationContext application;
    private final LabScope scope;

    StoryPeople(ApplicationContext application) {
        this.application = application;
        this.lab = SecondLab.empty(application, "Europe/London");
        scope = LabScope.enter(this.lab);
        SampleLab sample = new SampleLab(application);
        Password password =
                new Password.Hashed(application.getBean(PasswordEncoder.class).encode(PASSWORD));
        noor = sample.person("Noor Candlewick", password, Role.STUDENT);
        mateo = sample.person("Mateo Ironbark", password, Role.STUDENT);
        adaeze = sample.person("Adaeze Lanternby", password, Role.TECHNICIAN);
        ines = sample.person("Ines Quarryvale", password, Role.INSTRUCTOR);
        sample.authorise(noor.id());
        sample.authorise(mateo.id());
        application
                .getBean(DutyRegister.class)
                .plan(
                        adaeze.id(),
                        MovableClock.START.minus(Duration.ofHours(2)),
                        MovableClock.START.plus(Duration.ofHours(9)),
                        null);
        cell = sample.cell(7);
        cellName = application.getBean(Cells.class).find(cell).orElseThrow().name();
        application.getBean(DayTests.class).record(cell, adaeze.id(), SampleCell.goodReadings());
    }

    @Override
    public void close() {
        scope.close();
    }

    /** The latest revision of the operator's program. */
    Revision latest() {
        return application.getBean(Programs.class).latestOf(noor.id()).get(0);
    }
}
