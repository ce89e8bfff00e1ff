package org.standclear.cell;

import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.standclear.cell.CellRegister.Proposed;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.PersonId;

/**
 * Parts and fixtures at cells. Putting one there, or taking it away, is proposed as the cell's next version and approved by
 * another person; when the register learns another mass, reach or height of one that is at a cell, the cell follows with its
 * next version, proposed by who registered it and approved by who approved it. A tool that is fitted is changed at the robot
 * and read by two, so a correction of it begins a tool change. Programs are then checked anew by themselves.
 */
public interface PartChanges {

    /** Codes of the parts and fixtures that the version in force names. */
    List<String> at(CellId cell);

    /** Another person approves what the register holds, and the cells where it is follow. */
    Approved approve(UUID item, PersonId by);

    /** Proposes the cell's next version with the part or fixture there; the caller has checked that the person is staff. */
    Proposed put(CellId cell, UUID item, @Nullable Footprint where, PersonId by);

    /** Proposes the cell's next version without it. */
    Proposed takeAway(CellId cell, UUID item, PersonId by);

    /** Where a fixture stands on the table, in the cell's frame. */
    record Footprint(double xFrom, double xTo, double yFrom, double yTo) {

        /** Whether both sides have a length. */
        public boolean isOne() {
            return xFrom < xTo && yFrom < yTo;
        }
    }

    /** What came of approving. */
    sealed interface Approved {

        /**
         * It is approved.
         *
         * @param followed what happened at the cells where it is, in words
         */
        record Done(Equipment.Item item, List<String> followed) implements Approved {

            public Done {
                followed = List.copyOf(followed);
            }
        }

        /** It is not: says why, and with which field. */
        record Refused(String field, String says) implements Approved {}
    }
}
