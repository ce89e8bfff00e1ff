package org.standclear.story;

import java.time.Duration;
import org.springframework.context.ApplicationContext;
import org.springframework.security.crypto.password.PasswordEncoder;
import org.standclear.booking.SampleLab;
import org.standclear.cell.Cells;
import org.standclear.cell.DayTests;
import org.standclear.cell.SampleCell;
import org.standclear.people.DutyRegister;
import org.standclear.people.PeopleRegister.Password;
import org.standclear.people.Person;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.security.Role;
import org.standclear.program.Programs;
import org.standclear.program.Revision;
import org.standclear.testing.MovableClock;

/** The people of a story, with passwords, and the cell they meet at; all of them new. */
final class StoryPeople {

    static final String PASSWORD = "a long story at the bench";

    final Person noor;
    final Person mateo;
    final Person adaeze;
    final Person ines;
    final CellId cell;
    final String cellName;

    private final ApplicationContext application;

    StoryPeople(ApplicationContext application) {
        this.application = application;
        SampleLab lab = new SampleLab(application);
        Password password =
                new Password.Hashed(application.getBean(PasswordEncoder.class).encode(PASSWORD));
        noor = lab.person("Noor Candlewick", password, Role.STUDENT);
        mateo = lab.person("Mateo Ironbark", password, Role.STUDENT);
        adaeze = lab.person("Adaeze Lanternby", password, Role.TECHNICIAN);
        ines = lab.person("Ines Quarryvale", password, Role.INSTRUCTOR);
        lab.authorise(noor.id());
        lab.authorise(mateo.id());
        application
                .getBean(DutyRegister.class)
                .plan(
                        adaeze.id(),
                        MovableClock.START.minus(Duration.ofHours(2)),
                        MovableClock.START.plus(Duration.ofHours(9)),
                        null);
        cell = lab.cell(7);
        cellName = application.getBean(Cells.class).find(cell).orElseThrow().name();
        application.getBean(DayTests.class).record(cell, adaeze.id(), SampleCell.goodReadings());
    }

    /** The latest revision of the operator's program. */
    Revision latest() {
        return application.getBean(Programs.class).latestOf(noor.id()).get(0);
    }
}
