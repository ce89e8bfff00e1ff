package org.standclear.simulation;

import java.util.List;
import java.util.Optional;
import org.standclear.cell.DutyDue;
import org.standclear.cell.Equipment;
import org.standclear.cell.RecurringDuties.RecordDuty;
import org.standclear.cell.RecurringDuty;
import org.standclear.cell.ToolChanges;
import org.standclear.people.Person;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.Id;
import org.standclear.platform.ids.PersonId;
import org.standclear.signoff.PaperCards.PaperCard;

/** What comes round on the cells, the tools that are changed, and the cards that were written while nothing could be typed. */
final class UpkeepActs {

    private static final List<Double> OFFSET = List.of(0.0, 0.0, -60.0);

    private final Lab lab;
    private Optional<Equipment.Item> tool = Optional.empty();

    UpkeepActs(Lab lab) {
        this.lab = lab;
    }

    /** Before the term: how often, and done once. */
    String agree(CellId cell) {
        for (RecurringDuty duty : RecurringDuty.values()) {
            int days = duty == RecurringDuty.INSPECTION ? 21 : 50;
            lab.doors.duties().setInterval(cell, duty, days, "as agreed for this term", lab.cast.instructor.id());
            inspect(cell, duty);
        }
        return "intervals of " + lab.cast.name(cell);
    }

    private String inspect(CellId cell, RecurringDuty duty) {
        return Lab.word(lab.doors
                .duties()
                .record(new RecordDuty(
                        cell, duty, lab.today(), "A. Competent", "nothing found", lab.cast.instructor.id())));
    }

    /** What is late on the cell, or what is due next. */
    String inspect(CellId cell) {
        List<DutyDue> due = lab.doors.duties().due(cell);
        return due.stream()
                .filter(one -> one.overdue(lab.today()))
                .findFirst()
                .or(() -> Optional.of(lab.chance.one(due)))
                .map(one -> one.duty() + " " + inspect(cell, one.duty()))
                .orElse("no interval");
    }

    /** One act of a tool change; the next may be somebody else's, another one's number, or forgotten. */
    String changeTool(CellId cell) {
        Optional<ToolChanges.Change> open = lab.doors.toolChanges().open(cell);
        PersonId by = lab.chance.one(lab.cast.staff()).id();
        if (open.isEmpty()) {
            return "begun "
                    + Lab.word(lab.doors.toolChanges().begin(cell, registered().id(), by));
        }
        if (lab.chance.percent(10)) {
            return "given up " + Lab.word(lab.doors.toolChanges().giveUp(cell, by));
        }
        List<Double> read = lab.chance.percent(90) ? OFFSET : List.of(0.0, 0.0, -55.0);
        PersonId reader =
                lab.chance.percent(80) ? by : lab.chance.one(lab.cast.students).id();
        return "read " + Lab.word(lab.doors.toolChanges().read(cell, "G-02", read, reader));
    }

    boolean changes(CellId cell) {
        return lab.doors.toolChanges().open(cell).isPresent();
    }

    /** The gripper as it is fitted, so that programs still fit after the change. */
    private Equipment.Item registered() {
        if (tool.isEmpty()) {
            Equipment.Item item = new Equipment.Item(
                    Id.newValue(),
                    Equipment.Kind.TOOL,
                    "G-02",
                    "two-finger gripper",
                    0.42,
                    OFFSET,
                    25.0,
                    false,
                    lab.cast.technicians.get(0).id(),
                    lab.clock.instant(),
                    null);
            lab.doors.equipment().register(item);
            lab.doors.equipment().approve(item.id(), lab.cast.instructor.id());
            tool = lab.doors.equipment().find(item.id());
        }
        return tool.orElseThrow();
    }

    /** A card from paper, right or not; it is a late entry and releases nothing. */
    String paperCard(CellId cell) {
        List<Person> students = lab.cast.students;
        Person operator = lab.chance.one(students);
        Person attendant = lab.chance.one(students);
        Person releaser = lab.chance.percent(90) ? lab.chance.one(lab.cast.staff()) : lab.chance.one(students);
        return "paper card "
                + Lab.word(lab.doors
                        .paperCards()
                        .type(new PaperCard(
                                Id.newValue(),
                                cell,
                                null,
                                lab.clock.instant().minusSeconds(lab.chance.between(0, 3600)),
                                operator.id(),
                                attendant.id(),
                                releaser.id(),
                                "Peg and plate, revision 1",
                                "a41e",
                                lab.chance.percent(90) ? "reduced" : "full",
                                50,
                                "level 3",
                                "G-02",
                                "5",
                                "five passes",
                                lab.chance.one(lab.cast.staff()).id(),
                                lab.clock.instant())));
    }
}
