package org.standclear.booking;

import java.util.Optional;
import org.springframework.stereotype.Component;
import org.standclear.cell.Cell;
import org.standclear.cell.Cells;
import org.standclear.people.People;
import org.standclear.people.Person;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.lab.Labs;
import org.standclear.platform.web.NotFoundException;

/**
 * Who may act on what is somebody's, and in which lab: asked in the service itself, whatever page or program asked before.
 * What is another's or of another lab is not there, as it is on the pages.
 */
@Component
class WhoActs {

    private final People people;
    private final Cells cells;
    private final Labs labs;

    WhoActs(People people, Cells cells, Labs labs) {
        this.people = people;
        this.cells = cells;
        this.labs = labs;
    }

    /** Lab staff of this lab only. */
    void asStaff(PersonId by, String what) {
        if (!isStaff(by)) {
            throw new NotFoundException(what);
        }
    }

    /** The person, or lab staff of this lab for the person. */
    void asOrFor(PersonId person, PersonId by, String what) {
        if (!person.equals(by)) {
            asStaff(by, what);
        }
    }

    private boolean isStaff(PersonId by) {
        return people.find(by).filter(one -> one.active() && one.isLabStaff()).isPresent();
    }

    /** The person if it is one who has anything to do in this lab. */
    Person ofThisLab(PersonId person) {
        return people.find(person)
                .filter(one -> !one.roles().isEmpty())
                .orElseThrow(() -> new NotFoundException("person"));
    }

    /** The cell if it is one of this lab. */
    Cell cellOfThisLab(CellId cell) {
        Optional<Cell> found =
                cells.find(cell).filter(one -> one.lab().equals(labs.theLab().id()));
        return found.orElseThrow(() -> new NotFoundException("cell"));
    }
}
