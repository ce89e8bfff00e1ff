package org.standclear.simulation;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import org.springframework.context.ApplicationContext;
import org.springframework.security.crypto.password.PasswordEncoder;
import org.standclear.cell.CellRegister.Decided;
import org.standclear.cell.CellRegister.NewProposal;
import org.standclear.cell.CellRegister.Proposed;
import org.standclear.cell.SampleCell;
import org.standclear.people.AuthorisationRegister.Grant;
import org.standclear.people.AuthorisationRegister.Outcome.Done;
import org.standclear.people.Duty;
import org.standclear.people.PeopleRegister;
import org.standclear.people.PeopleRegister.NewPerson;
import org.standclear.people.PeopleRegister.Password;
import org.standclear.people.Person;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.security.Role;

/** The people and cells of one lab in a term. */
final class Cast {

    static final String PIN = "482917";

    private static final Map<String, String> HASHES = new ConcurrentHashMap<>();
    private static final Instant FROM = Term.BEGIN.minus(Duration.ofDays(30));
    private static final Instant UNTIL = Term.BEGIN.plus(Duration.ofDays(120));

    final List<Person> students = new ArrayList<>();
    final List<Person> technicians = new ArrayList<>();
    final Person instructor;
    final Person reviewer;
    final Person screen;
    /** Authorisations that stand. */
    final List<Done> granted = new ArrayList<>();

    final List<CellId> cells = new ArrayList<>();
    final List<String> cellNames;

    private final Doors doors;

    Cast(ApplicationContext application, Doors doors, List<String> cellNames) {
        this.doors = doors;
        this.cellNames = cellNames;
        instructor = person("Ines Quarryvale", Role.INSTRUCTOR);
        reviewer = person("Rosalind Oyelaran-Pike", Role.REVIEWER);
        screen = person("Bench screen", Role.BENCH);
        for (String name : List.of("Adaeze Lanternby", "Hemi Coppergate", "Tal Emberley")) {
            technicians.add(person(name, Role.TECHNICIAN));
        }
        for (String name : List.of(
                "Noor Candlewick",
                "Mateo Ironbark",
                "Yuki Halfmoon",
                "Saoirse Pinwheel",
                "Kofi Marblewood",
                "Leilani Driftmark",
                "Wren Saltmarsh")) {
            students.add(person(name, Role.STUDENT));
        }
        String pinHash = HASHES.computeIfAbsent(PIN, application.getBean(PasswordEncoder.class)::encode);
        atRobots().forEach(one -> doors.pins().keepHashed(one.id(), pinHash));
        readied();
    }

    /** The same people in another lab, with the same parts. */
    Cast(Cast neighbours, List<String> cellNames) {
        this.doors = neighbours.doors;
        this.cellNames = cellNames;
        instructor = appointed(neighbours.instructor, Role.INSTRUCTOR);
        reviewer = appointed(neighbours.reviewer, Role.REVIEWER);
        screen = person("Other bench screen", Role.BENCH);
        neighbours.technicians.forEach(one -> technicians.add(appointed(one, Role.TECHNICIAN)));
        neighbours.students.forEach(one -> students.add(appointed(one, Role.STUDENT)));
        readied();
    }

    private void readied() {
        for (Person one : atRobots()) {
            for (Duty duty : Duty.values()) {
                authorise(one, duty, FROM, UNTIL);
            }
        }
        for (int i = 0; i < cellNames.size(); i++) {
            cells.add(cell(cellNames.get(i), i * 7));
        }
    }

    private List<Person> atRobots() {
        List<Person> all = everybody();
        all.add(instructor);
        return all;
    }

    private Person appointed(Person person, Role role) {
        return ((PeopleRegister.Outcome.Done) doors.people().appoint(person.id(), Set.of(role), person.id())).person();
    }

    private Person person(String name, Role role) {
        PeopleRegister.Outcome added = doors.people()
                .add(new NewPerson(
                        name.toLowerCase(java.util.Locale.ROOT).replace(' ', '.'),
                        name,
                        Set.of(role),
                        new Password.Hashed("{never}"),
                        null));
        return ((PeopleRegister.Outcome.Done) added).person();
    }

    void authorise(Person person, Duty duty, Instant from, Instant until) {
        var outcome = doors.authorisations()
                .grant(new Grant(person.id(), duty, null, from, until, "induction passed", instructor.id()));
        granted.add((Done) outcome);
    }

    private CellId cell(String name, int offsetMinutes) {
        Proposed proposed = doors.register()
                .propose(new NewProposal(null, SampleCell.file(name, 1), "new cell", PersonId.next(), offsetMinutes));
        return ((Decided.Done) doors.register()
                        .approve(((Proposed.Kept) proposed).proposal().id(), PersonId.next(), 0))
                .cell();
    }

    /** Everybody who may stand at a robot. */
    List<Person> everybody() {
        List<Person> all = new ArrayList<>(students);
        all.addAll(technicians);
        return all;
    }

    List<Person> staff() {
        List<Person> all = new ArrayList<>(technicians);
        all.add(instructor);
        return all;
    }

    Person find(PersonId id) {
        List<Person> all = atRobots();
        all.add(screen);
        return all.stream().filter(one -> one.id().equals(id)).findFirst().orElseThrow();
    }

    String name(CellId cell) {
        return cellNames.get(cells.indexOf(cell));
    }
}
