package org.standclear.desk.web;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.springframework.stereotype.Component;
import org.standclear.cell.Cell;
import org.standclear.cell.Cells;
import org.standclear.people.Authorisation;
import org.standclear.people.Authorisations;
import org.standclear.people.People;
import org.standclear.platform.ids.CellId;
import org.standclear.platform.ids.PersonId;
import org.standclear.platform.security.SignedInPerson;
import org.standclear.platform.time.LabTime;

/** Authorisations that end within thirty days and are not followed by another: of everybody for staff, of a person for that person. */
@Component
class EndingAuthorisations {

    private static final Duration AHEAD = Duration.ofDays(30);

    private final Authorisations authorisations;
    private final Cells cells;
    private final People people;
    private final LabTime labTime;

    EndingAuthorisations(Authorisations authorisations, Cells cells, People people, LabTime labTime) {
        this.authorisations = authorisations;
        this.cells = cells;
        this.people = people;
        this.labTime = labTime;
    }

    /** Somebody's, as the list of what falls due shows it. */
    record Ending(LocalDate on, String day, String where, String who, String href, String duty) {}

    /** By cell, those for every cell first; nothing for who is no lab staff. */
    Map<String, List<Ending>> byCell(SignedInPerson me) {
        Map<String, List<Ending>> byCell = new LinkedHashMap<>();
        Map<String, List<Ending>> ofOne = new TreeMap<>();
        for (Authorisation one : me.isLabStaff() ? ending() : List.<Authorisation>of()) {
            Map<String, List<Ending>> into = one.cell() == null ? byCell : ofOne;
            into.computeIfAbsent(where(one), key -> new ArrayList<>()).add(ending(one));
        }
        byCell.putAll(ofOne);
        return byCell;
    }

    /** The person's own, in a sentence each. */
    List<String> of(PersonId person) {
        return ending().stream()
                .filter(one -> one.person().equals(person))
                .map(one -> "Your authorisation as " + one.duty().words() + " on " + where(one) + " ends "
                        + labTime.full(one.validUntil()) + ". A technician or an instructor renews it.")
                .toList();
    }

    /** One whole day of the calendar file for each day and cell on which any end. */
    List<DueCalendar.Day> days(SignedInPerson me) {
        Map<String, List<Ending>> byDay = new LinkedHashMap<>();
        byCell(me).values().stream()
                .flatMap(List::stream)
                .forEach(one -> byDay.computeIfAbsent(one.on() + " " + one.where(), key -> new ArrayList<>())
                        .add(one));
        return byDay.values().stream().map(EndingAuthorisations::day).toList();
    }

    private static DueCalendar.Day day(List<Ending> together) {
        Ending first = together.get(0);
        String uid = "authorisations-" + first.on() + "-"
                + Integer.toHexString(first.where().hashCode());
        List<String> who =
                together.stream().map(one -> one.who() + ", " + one.duty()).toList();
        return new DueCalendar.Day(
                uid + "@standclear",
                first.on(),
                first.where() + ": "
                        + (who.size() == 1 ? "one authorisation ends" : who.size() + " authorisations end"),
                String.join("\n", who));
    }

    private List<Authorisation> ending() {
        Instant now = labTime.now();
        return authorisations.ending(now, now.plus(AHEAD));
    }

    private Ending ending(Authorisation one) {
        return new Ending(
                labTime.date(one.validUntil()),
                labTime.full(one.validUntil()),
                where(one),
                people.printedName(one.person()),
                "/people/" + one.person(),
                one.duty().words());
    }

    private String where(Authorisation one) {
        CellId cell = one.cell();
        return cell == null ? "every cell" : cells.find(cell).map(Cell::name).orElse("a cell");
    }
}
