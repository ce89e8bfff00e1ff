package org.standclear.run.web;

import java.util.List;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.standclear.booking.Booking;
import org.standclear.booking.Bookings;
import org.standclear.cell.Cell;
import org.standclear.cell.Cells;
import org.standclear.people.People;
import org.standclear.platform.time.LabTime;
import org.standclear.run.Credits;
import org.standclear.run.Credits.Credit;
import org.standclear.run.Run;
import org.standclear.run.Runs;

/** The minutes that precautionary stops took, and which of them became a make-up; for lab staff. */
@Controller
class CreditPages {

    private static final int SHOWN = 100;

    private final Credits credits;
    private final Bookings bookings;
    private final Runs runs;
    private final Cells cells;
    private final People people;
    private final LabTime labTime;

    CreditPages(Credits credits, Bookings bookings, Runs runs, Cells cells, People people, LabTime labTime) {
        this.credits = credits;
        this.bookings = bookings;
        this.runs = runs;
        this.cells = cells;
        this.people = people;
        this.labTime = labTime;
    }

    /**
     * One credit in words.
     *
     * @param href the page of the run, or of the booking when nothing ran
     */
    record Line(String person, String turns, String href, String slot, String cell, String minutes, String cameOf) {}

    @GetMapping("/runs/credits")
    String show(Model model) {
        List<Line> lines = credits.latest(SHOWN).stream().map(this::line).toList();
        model.addAttribute("lines", lines);
        return "runs/credits";
    }

    private Line line(Credit credit) {
        Booking booking = bookings.find(credit.booking()).orElseThrow();
        return new Line(
                people.printedName(credit.person()),
                "/people/" + credit.person() + "/turns",
                runs.of(credit.booking())
                        .map(Run::id)
                        .map(run -> "/runs/" + run)
                        .orElse("/bookings/" + credit.booking()),
                labTime.day(booking.start()) + ", " + labTime.times(booking.start(), booking.end()),
                cells.find(booking.cell()).map(Cell::name).orElse("a cell"),
                credit.minutes() + " min, from " + labTime.time(credit.stoppedAt()),
                credit.spentFor() == null
                        ? "not made up yet; " + credits.open(credit.person()) + " min in all"
                        : "went into a make-up");
    }
}
