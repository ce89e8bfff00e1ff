package org.standclear.booking;

import java.time.LocalTime;
import java.time.ZoneId;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.UUID;
import java.util.function.Supplier;
import org.springframework.context.ApplicationContext;
import org.standclear.booking.labs.LabRegister;
import org.standclear.cell.CellRegister;
import org.standclear.cell.SampleCell;
import org.standclear.people.Person;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.LabId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.lab.Lab;
import org.standclear.platform.lab.LabScope;
import org.standclear.platform.security.Role;

/** A further lab in a running application, in a zone of its own, with a cell and one person of each kind. */
public final class SecondLab {

    private final LabId id;
    private final CellId cell;
    private final SampleLab sample;
    private final Map<Role, Person> people = new EnumMap<>(Role.class);

    /** Makes it; it opens from 8 to 18 on weekdays. */
    public SecondLab(ApplicationContext application, String zone) {
        id = empty(application, zone);
        sample = LabScope.in(id, () -> new SampleLab(application));
        cell = LabScope.in(id, () -> {
            for (Role role : List.of(Role.STUDENT, Role.TECHNICIAN, Role.INSTRUCTOR, Role.REVIEWER, Role.BENCH)) {
                people.put(role, sample.person("Otherlab " + role.words(), role));
            }
            sample.authorise(person(Role.STUDENT).id());
            sample.authorise(person(Role.TECHNICIAN).id());
            CellRegister cells = application.getBean(CellRegister.class);
            String file =
                    SampleCell.file("Farcell " + UUID.randomUUID().toString().substring(0, 8), 1);
            var proposed = (CellRegister.Proposed.Kept)
                    cells.propose(new CellRegister.NewProposal(null, file, "new cell", PersonId.next(), 0));
            return ((CellRegister.Decided.Done)
                            cells.approve(proposed.proposal().id(), PersonId.next(), 0))
                    .cell();
        });
    }

    /** A lab with nobody and nothing in it, open from 8 to 18 on weekdays. */
    public static LabId empty(ApplicationContext application, String zone) {
        String name = "Second bench " + UUID.randomUUID().toString().substring(0, 8);
        Lab lab = new Lab(
                LabId.next(),
                "Another college",
                "Room 9",
                name,
                ZoneId.of(zone),
                "555 0909",
                "at the desk",
                "by the door");
        var made = application
                .getBean(LabRegister.class)
                .make(
                        lab,
                        List.of(new OpenPeriod(LocalTime.of(8, 0), LocalTime.of(18, 0))),
                        "",
                        Role.TECHNICIAN,
                        PersonId.next());
        return ((LabRegister.Outcome.Done) made).lab();
    }

    /** Which lab it is. */
    public LabId id() {
        return id;
    }

    /** Its cell, whose slots begin on the half hour. */
    public CellId cell() {
        return cell;
    }

    /** What makes people and cells; only in the lab's scope do they belong to it. */
    public SampleLab sample() {
        return sample;
    }

    /** The roles that somebody has here. */
    public Set<Role> roles() {
        return people.keySet();
    }

    /** The one with that role. */
    public Person person(Role role) {
        return Objects.requireNonNull(people.get(role));
    }

    /** Does something for this lab. */
    public <T> T in(Supplier<T> work) {
        return LabScope.in(id, work);
    }
}
