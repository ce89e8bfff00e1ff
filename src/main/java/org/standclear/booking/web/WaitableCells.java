package org.standclear.booking.web;

import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.standclear.cell.Cell;
import org.standclear.people.Authorisation;
import org.standclear.people.Duty;

/**
 * The cells whose slots a person can wait for, or why there is none and what to do.
 *
 * @param choices "any" and each cell, by id; empty when there is none
 * @param none why there is none; empty when there are some
 * @param todo what to do about it
 */
record WaitableCells(Map<String, String> choices, String none, String todo) {

    /**
     * Those that the person may operate now or later.
     *
     * @param held the person's authorisations, the expired ones too
     */
    static WaitableCells of(List<Cell> cells, List<Authorisation> held, Instant now) {
        if (cells.isEmpty()) {
            return new WaitableCells(
                    Map.of(),
                    "There is no cell to wait for yet",
                    "A technician or an instructor proposes one as a cell file; another person approves it.");
        }
        Map<String, String> choices = new LinkedHashMap<>();
        choices.put("", "Any cell I may operate");
        cells.stream()
                .filter(cell -> held.stream().anyMatch(one -> operates(one, cell, now)))
                .forEach(cell -> choices.put(cell.id().toString(), cell.name()));
        return choices.size() > 1
                ? new WaitableCells(choices, "", "")
                : new WaitableCells(
                        Map.of(),
                        "You are not authorised as operator of any cell",
                        "No slot would be offered to you. Ask lab staff for the induction; they enter the authorisation"
                                + " after it. Then you can wait for a slot here.");
    }

    private static boolean operates(Authorisation one, Cell cell, Instant now) {
        return one.duty() == Duty.OPERATOR
                && one.covers(cell.id(), one.validFrom().isAfter(now) ? one.validFrom() : now);
    }

    public boolean isEmpty() {
        return choices.isEmpty();
    }
}
